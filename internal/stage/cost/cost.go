// Package cost turns needs into a shopping list of whole packages.
package cost

import (
	"pourwright/internal/finding"
	"pourwright/internal/material"
)

// Input is what is needed.
type Input struct {
	Needs []Need
}

// A Need is a quantity of one material.
type Need struct {
	Name     string
	Room     string
	Quantity float64 // in Unit
	Unit     string  // l, kg, sheet, bar, cartridge
	Packages []material.Package
}

// Result is what to buy.
type Result struct {
	Lines    []Line  `json:"lines"`
	Total    float64 `json:"total"` // of the lines that have a price
	Unpriced int     `json:"unpriced"`
}

// A Line is one material in whole packages.
type Line struct {
	Name   string  `json:"name"`
	Room   string  `json:"room"`
	Need   float64 `json:"need"`
	Unit   string  `json:"unit"`
	Buy    []Buy   `json:"buy"`
	Bought float64 `json:"bought"`
	Left   float64 `json:"left"`
	Price  float64 `json:"price"`
}

// Buy is a number of packages of one size.
type Buy struct {
	Count int     `json:"count"`
	Size  float64 `json:"size"`
}

// Compute is pending.
func Compute(in Input) (Result, []finding.Finding) { panic("cost pending") }
