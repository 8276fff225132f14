package mix_test

import (
	"fmt"
	"math/big"
	"strings"
)

// ground draws ground with straight sides, as the JSON of an area. With flat it draws
// some of that area, or none where it cannot be written.
func (d *counter) ground(flat *big.Rat) written {
	count := int64(1)
	if d.IntN(4) == 0 {
		count += d.Int64N(50)
	}
	times := big.NewRat(count, 1)
	plus, less := new(big.Rat), new(big.Rat)
	var more []string
	if d.IntN(4) == 0 {
		g := d.anyShape()
		more, plus = append(more, `"plus": [`+g.text+`]`), g.value
	}
	if d.IntN(4) == 0 {
		hole := d.quantity("area", 1e4, 5e5)
		more, less = append(more, `"less": ["`+hole.text+`"]`), hole.value
	}
	var one *big.Rat
	if flat != nil {
		one = new(big.Rat).Sub(flat, plus)
		one.Add(one, less).Quo(one, times)
	}
	g := d.shape(one)
	if g.text == "" && flat == nil {
		g = d.anyShape()
	}
	if g.text == "" {
		return written{}
	}
	sum := new(big.Rat).Mul(g.value, times)
	sum.Add(sum, plus).Sub(sum, less)
	if v, _ := sum.Float64(); v <= 1e4 || v > 3.9e12 {
		if flat != nil {
			return written{}
		}
		return d.ground(nil)
	}
	if count > 1 {
		more = append(more, fmt.Sprintf(`"count": %d`, count))
	}
	text := g.text
	if len(more) > 0 || d.IntN(2) == 0 || !strings.HasPrefix(text, `{"rectangle": "`) && !strings.HasPrefix(text, `{"area": "`) {
		text = strings.TrimSuffix(text, "}")
		for _, m := range more {
			text += ", " + m
		}
		text += "}"
	} else { // in one line
		_, line, _ := strings.Cut(text, ": ")
		text = strings.TrimSuffix(line, "}")
	}
	return written{text, sum}
}

// anyShape draws until there is a shape.
func (d *counter) anyShape() written {
	for {
		if g := d.shape(nil); g.text != "" {
			return g
		}
	}
}

// shape draws a shape, as an object. With flat one of its measures follows.
func (d *counter) shape(flat *big.Rat) written {
	if d.IntN(4) == 0 {
		g := d.quantity("area", 1e6, 1e12)
		if flat != nil {
			var ok bool
			g.value = flat
			if g.text, ok = d.write("area", flat, 1e4, 3.9e12); !ok {
				return written{}
			}
		}
		return written{`{"area": "` + g.text + `"}`, g.value}
	}
	wide, long := d.quantity("length", 300, 1e5), d.quantity("length", 1_000, 5e5)
	value := new(big.Rat).Mul(wide.value, long.value)
	if flat != nil {
		value = flat
	}
	// solve makes long the measure that comes to value when it is so many times as
	// much as wide by long, and more.
	solve := func(times *big.Rat, more *big.Rat, most float64) (ok bool) {
		area := new(big.Rat).Sub(value, more)
		long.value = area.Quo(area, new(big.Rat).Mul(times, wide.value))
		long.text, ok = d.write("length", long.value, 10, most)
		return ok
	}
	one, half, none := big.NewRat(1, 1), big.NewRat(1, 2), new(big.Rat)
	switch d.IntN(4) {
	case 0:
		if flat != nil && !solve(one, none, 9e7) {
			return written{}
		}
		return written{`{"rectangle": "` + wide.text + " x " + long.text + `"}`, value}
	case 1:
		if flat == nil {
			value.Mul(value, half)
		} else if !solve(half, none, 9e7) {
			return written{}
		}
		return written{`{"triangle": "` + wide.text + " x " + long.text + `"}`, value}
	case 2:
		return d.bent(flat, value, wide, &long, solve)
	}
	// A house with a pitched roof, whose top is off the middle: a rectangle and a
	// triangle on it.
	roof := d.quantity("length", 100, 1e4)
	gable := new(big.Rat).Mul(new(big.Rat).Mul(roof.value, wide.value), half)
	if flat == nil {
		value.Add(value, gable)
	} else if !solve(one, gable, 8e5) {
		return written{}
	}
	top := new(big.Rat).Add(long.value, roof.value)
	if v, _ := top.Float64(); v > 9e5 {
		return written{}
	}
	high, ok := d.write("length", top, 1, 9e5)
	across := d.quantity("length", 1, 900)
	if !ok {
		return written{}
	}
	return written{fmt.Sprintf(`{"corners": [["0 in", "0 in"], ["%s", "0 in"], ["%s", "%s"], ["-%s", "%s"], ["0 in", "%s"]]}`,
		wide.text, wide.text, long.text, across.text, high, long.text), value}
}

// bent is a strip of one or two runs, with a gap or none, measured along one of its
// lines.
func (d *counter) bent(flat, value *big.Rat, wide written, long *written, solve func(times, more *big.Rat, most float64) bool) written {
	square := new(big.Rat).Mul(wide.value, wide.value)
	extra := new(big.Rat) // beside wide by long
	edge := []string{"centre", "outer", "inner"}[d.IntN(3)]
	second := d.quantity("length", 2e5, 4e5)
	var more, runs string
	if d.IntN(2) == 0 {
		runs = `, "` + second.text + `"`
		extra.Add(extra, new(big.Rat).Mul(second.value, wide.value))
		switch edge {
		case "outer":
			extra.Sub(extra, square)
		case "inner":
			extra.Add(extra, square)
		}
	}
	if d.IntN(3) == 0 {
		gap := d.quantity("length", 100, 900)
		more = `, "gaps": ["` + gap.text + `"]`
		extra.Sub(extra, new(big.Rat).Mul(gap.value, wide.value))
	}
	if flat == nil {
		value.Add(value, extra)
	} else if !solve(big.NewRat(1, 1), extra, 9e7) {
		return written{}
	}
	return written{fmt.Sprintf(`{"strip": {"along": ["%s"%s], "width": "%s", "edge": "%s"%s}}`,
		long.text, runs, wide.text, edge, more), value}
}
