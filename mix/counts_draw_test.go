package mix_test

import (
	"fmt"
	"math"
	"math/big"
	"strconv"
	"strings"
)

// written is a quantity as text, and what that says: in millimetres, square
// millimetres or cubic millimetres, which are microlitres.
type written struct {
	text  string
	value *big.Rat
}

// unitOf is one unit of a kind. The values are definitions: the inch is 25.4 mm,
// the acre 43,560 square feet, the gallon 231 cubic inches, the bushel of 32 dry
// quarts 2150.42 cubic inches (NIST Handbook 44 Appendix C).
type unitOf struct {
	name string
	size *big.Rat
}

func sizes(list ...string) (units []unitOf) {
	for _, s := range list {
		name, size, _ := strings.Cut(s, "=")
		r, ok := new(big.Rat).SetString(size)
		if !ok {
			panic(s)
		}
		units = append(units, unitOf{name, r})
	}
	return units
}

var countUnits = map[string][]unitOf{
	"length": sizes("in=25.4", "ft=304.8", "yd=914.4", "mm=1", "cm=10", "m=1000"),
	"area": sizes("sq in=645.16", "sq ft=92903.04", "sq yd=836127.36", "acre=4046856422.4", "ha=10000000000",
		"sq m=1000000", "sq cm=100"),
	"volume": sizes("cu in=16387.064", "cu ft=28316846.592", "cu yd=764554857.984", "mL=1000", "L=1000000",
		"m3=1000000000", "gal=3785411.784", "dry qt=1101220.942715", "bu=35239070.16688", "liq qt=946352.946"),
}

// denominators are those that people write, and some that nobody does.
var denominators = []int64{1, 1, 1, 2, 3, 3, 3, 4, 7, 6, 7, 8, 9, 11, 12, 13, 16, 32, 64, 97}

// plain is how many of them a quantity has that another must fit.
const plain = 9

// quantity draws a quantity from low to high, about evenly in its logarithm.
func (d *counter) quantity(kind string, low, high float64) written {
	list := countUnits[kind]
	for {
		u := &list[d.IntN(len(list))]
		size, _ := u.size.Float64()
		x := math.Exp(math.Log(low)+d.Float64()*math.Log(high/low)) / size
		if x > 1e6 || x < 1e-3 {
			continue
		}
		n, den := int64(0), int64(1)
		switch {
		case d.plain:
			den = denominators[d.IntN(plain)]
		case d.IntN(3) == 0: // a decimal: 2.333
			den = int64(math.Pow10(d.IntN(5)))
		default:
			den = denominators[d.IntN(len(denominators))]
		}
		if n = int64(math.Round(x * float64(den))); n == 0 {
			continue
		}
		number := big.NewRat(n, den)
		value := new(big.Rat).Mul(number, u.size)
		if v, _ := value.Float64(); v < low*0.9 || v > high*1.1 {
			continue
		}
		return written{d.number(number) + " " + u.name, value}
	}
}

// number writes a fraction: 3, 2.333, 1/3, 2 1/3, 7/3.
func (d *counter) number(r *big.Rat) string {
	if r.IsInt() {
		return r.Num().String()
	}
	if decimal := r.FloatString(12); d.IntN(2) == 0 {
		if back, _ := new(big.Rat).SetString(decimal); back.Cmp(r) == 0 && len(strings.Trim(decimal, "0")) < 18 {
			return strings.TrimRight(decimal, "0")
		}
	}
	whole, rest := new(big.Int).QuoRem(r.Num(), r.Denom(), new(big.Int))
	if whole.Sign() == 0 || d.IntN(4) == 0 {
		return r.String()
	}
	return whole.String() + " " + rest.String() + "/" + r.Denom().String()
}

// write writes a value in the first unit in which it can be written, of all units in
// any order. ok is false where there is none.
func (d *counter) write(kind string, value *big.Rat, low, high float64) (text string, ok bool) {
	if v, _ := value.Float64(); v < low || v > high {
		return "", false
	}
	list := countUnits[kind]
	first := d.IntN(len(list))
	for i := range list {
		u := &list[(first+i)%len(list)]
		r := new(big.Rat).Quo(value, u.size)
		if r.Denom().IsInt64() && r.Denom().Int64() <= 1_000_000 && r.Num().IsInt64() && r.Num().Int64() < 1e17 {
			return d.number(r) + " " + u.name, true
		}
	}
	return "", false
}

// share draws a percentage below most, or none.
func (d *counter) share(most int64) (string, *big.Rat) {
	if d.IntN(2) == 0 {
		return "0%", new(big.Rat)
	}
	if d.plain {
		return "20%", big.NewRat(1, 5)
	}
	if d.IntN(3) == 0 {
		den := 3 + d.Int64N(5)
		return big.NewRat(1, den).String(), big.NewRat(1, den)
	}
	n := 1 + d.Int64N(most)
	return strconv.FormatInt(n, 10) + "%", big.NewRat(n, 100)
}

// grown draws what goes in and the allowances: the fields, and how many times the
// volume in place is bought of the material.
func (d *counter) grown(id string) (fields string, times *big.Rat) {
	settle, s := d.share(30)
	spare, e := d.share(20)
	one := big.NewRat(1, 1)
	times = new(big.Rat).Quo(new(big.Rat).Add(one, e), new(big.Rat).Sub(one, s))
	fields = fmt.Sprintf(`"settle": "%s", "spare": "%s", "material": "%s"`, settle, spare, id)
	if d.IntN(4) == 0 {
		loss, l := d.share(25)
		parts, others := 1+d.Int64N(7), 1+d.Int64N(7)
		times.Quo(times, new(big.Rat).Sub(one, l)).Mul(times, big.NewRat(parts, parts+others))
		fields = fmt.Sprintf(`"settle": "%s", "spare": "%s", "blend_loss": "%s", "mix": "%s %d, vermiculite %d"`,
			settle, spare, loss, id, parts, others)
	}
	return fields, times
}

// task draws a task and says what it takes of the material, loose. With takes it
// makes one that takes that, by one of its measures, or returns "" where that measure
// cannot be written.
func (d *counter) task(id string, takes *big.Rat) (task string, loose *big.Rat) {
	fields, times := d.grown(id)
	var net *big.Rat
	if takes != nil {
		net = new(big.Rat).Quo(takes, times)
	}
	var body string
	if d.IntN(3) == 0 {
		body, net = d.fill(net)
	} else {
		body, net = d.layer(net)
	}
	if body == "" {
		return "", nil
	}
	return "{" + body + ", " + fields + "}", new(big.Rat).Mul(net, times)
}

// fill fills boxes, square pots or pots that hold so much.
func (d *counter) fill(net *big.Rat) (string, *big.Rat) {
	count := int64(math.Exp(d.Float64() * math.Log(1e5)))
	cells := int64(1)
	if d.IntN(3) == 0 {
		cells += d.Int64N(200)
	}
	all := big.NewRat(count*cells, 1)
	line := fmt.Sprintf(`{"kind": "fill", "containers": [{"count": %d, "cells": %d, %%s}]`, count, cells)[1:]
	if d.IntN(2) == 0 {
		holds := d.quantity("volume", 2_000, 2e7)
		if net != nil {
			var ok bool
			holds.value = new(big.Rat).Quo(net, all)
			if holds.text, ok = d.write("volume", holds.value, 100, 1e10); !ok {
				return "", nil
			}
		}
		return fmt.Sprintf(line, `"holds": "`+holds.text+`"`), new(big.Rat).Mul(holds.value, all)
	}
	long, wide := d.quantity("length", 20, 900), d.quantity("length", 20, 900)
	if square := d.IntN(3) == 0; square {
		wide = long
	}
	floor := new(big.Rat).Mul(long.value, wide.value)
	rim, deep := written{"0 in", new(big.Rat)}, d.quantity("length", 60, 900)
	if d.IntN(2) == 0 {
		rim = d.quantity("length", 5, 25)
	}
	if net != nil {
		var ok bool
		deep.value = new(big.Rat).Quo(net, floor)
		deep.value.Quo(deep.value, all).Add(deep.value, rim.value)
		if deep.text, ok = d.write("length", deep.value, 30, 1e6); !ok {
			return "", nil
		}
	}
	body := fmt.Sprintf(`"box": "%s x %s x %s", "below_rim": "%s"`, long.text, wide.text, deep.text, rim.text)
	if long.text == wide.text {
		body = fmt.Sprintf(`"across": "%s", "height": "%s", "shape": "square", "below_rim": "%s"`, long.text, deep.text, rim.text)
	}
	v := new(big.Rat).Sub(deep.value, rim.value)
	return fmt.Sprintf(line, body), v.Mul(v, floor).Mul(v, all)
}

// layer covers or amends ground.
func (d *counter) layer(net *big.Rat) (string, *big.Rat) {
	depth := d.quantity("length", 3, 600)
	part := big.NewRat(1, 1)
	share, s := d.share(40)
	share = strings.ReplaceAll(share, "%", "%%") // it goes into a form
	form := `"kind": "cover", "area": %s, "layer": "%s"`
	switch n := d.IntN(4); {
	case n == 0:
		form = `"kind": "amend", "area": %s, "layer": "%s", "over": "1/3 m"`
	case n == 1 && s.Sign() > 0:
		form, part = `"kind": "amend", "area": %s, "into": "%s", "share": "`+share+`"`, s
	case n == 2 && s.Sign() > 0:
		form = `"kind": "amend", "area": %s, "over": "%s", "share": "` + share + `"`
		part = new(big.Rat).Quo(s, new(big.Rat).Sub(big.NewRat(1, 1), s))
	}
	if net == nil || d.IntN(2) == 0 { // the depth is what brings it there
		area := d.ground(nil)
		flat := new(big.Rat).Mul(area.value, part)
		if net != nil {
			var ok bool
			depth.value = new(big.Rat).Quo(net, flat)
			if depth.text, ok = d.write("length", depth.value, 0.1, 5e4); !ok {
				return "", nil
			}
		}
		return fmt.Sprintf(form, area.text, depth.text), flat.Mul(flat, depth.value)
	}
	area := d.ground(new(big.Rat).Quo(net, new(big.Rat).Mul(part, depth.value)))
	if area.text == "" {
		return "", nil
	}
	return fmt.Sprintf(form, area.text, depth.text), net
}
