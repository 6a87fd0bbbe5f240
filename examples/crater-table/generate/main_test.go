package main

import (
	"bytes"
	"math"
	"os"
	"testing"
)

func TestCraterIsTheGenerators(t *testing.T) {
	want, err := os.ReadFile("../crater.txt")
	if err != nil {
		t.Fatal(err)
	}
	var got bytes.Buffer
	if err := write(&got); err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(got.Bytes(), want) {
		t.Error("crater.txt is not what the generator writes; run it again")
	}
}

func TestCraterIsAClosedBasin(t *testing.T) {
	deepest := 0.0
	middle := cell * (nodes - 1) / 2
	for i := range nodes {
		for k := range nodes {
			x, y := cell*float64(i)-middle, cell*float64(k)-middle
			d := depth(x, y)
			deepest = math.Max(deepest, d)
			if d > 0 && math.Hypot(x, y) > 260 {
				t.Fatalf("%v mm deep at %v, %v", d, x, y)
			}
		}
	}
	if deepest < 44 || deepest > 48 {
		t.Errorf("deepest %v mm, want about 46", deepest)
	}
}
