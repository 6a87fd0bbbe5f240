package saw

import (
	"context"
	"encoding/json"
	"fmt"
	"testing"
	"time"
)

func shopList() SheetProblem {
	return SheetProblem{
		Pieces: []Piece{
			{Name: "base", LengthMM: 1300, WidthMM: 700, Count: 1},
			{Name: "long side", LengthMM: 1300, WidthMM: 118, Count: 2, Bevels: []Bevel{{EndA, 45}, {EndB, 45}}},
			{Name: "short side", LengthMM: 700, WidthMM: 118, Count: 2},
			{Name: "batten", LengthMM: 600, WidthMM: 60, Count: 8},
			{Name: "divider", LengthMM: 400, WidthMM: 380, Count: 5, Turn: Along},
			{Name: "dam", LengthMM: 210, WidthMM: 150, Count: 3},
		},
		Stock: []Sheet{
			{Name: "sheet", LengthMM: 2440, WidthMM: 1220, Unlimited: true, Price: 62, Trim: TrimAll(10)},
			{Name: "half", LengthMM: 1220, WidthMM: 1220, Unlimited: true, Price: 36, Trim: TrimAll(10)},
			{Name: "old", LengthMM: 900, WidthMM: 640, Count: 1, Owned: true, Zones: []Zone{{XMM: 300, YMM: 200, LengthMM: 40, WidthMM: 40, Why: "hole"}}},
		},
		KerfMM: 3.2, SmallestOffcut: Size{400, 150}, NarrowestStripMM: 50,
	}
}

func TestShopList(t *testing.T) {
	start := time.Now()
	p := Sheets(context.Background(), shopList())
	fmt.Println(time.Since(start))
	for _, s := range p.Settings {
		fmt.Println(s)
	}
	for _, s := range p.Cuts {
		fmt.Printf("%+v\n", s)
	}
	for _, s := range p.Sheets {
		fmt.Println(s.ID, s.Name, s.Used)
	}
	p.Sheets, p.Cuts, p.Settings = nil, nil, nil
	b, _ := json.Marshal(p)
	fmt.Println(string(b))
}
