package mix_test

import (
	"fmt"
	"math/big"
	"strings"
	"testing"
)

// rounding is how a source comes from the exact figure to the one it prints.
type rounding struct {
	way    string   // exact, nearest, cut, up, range, rule or wrong
	step   *big.Rat // what it is rounded to, or nil for the last place printed
	factor *big.Rat // by how much a factor of the source's own differs, or nil
	off    string   // of a rule of thumb, how far it is off, such as "8.0%"
}

// piTo35 is pi to 35 places, for sources that take 22/7 or 3.14.
const piTo35 = "3.14159265358979323846264338327950288"

// parseRounding reads "nearest", "cut 1/2", "with 0.167 for 1/6, exact" or
// "rule 8.0%".
func parseRounding(text string) (r rounding, wrong string) {
	if factor, found := strings.CutPrefix(text, "with "); found {
		taken, rest, _ := strings.Cut(factor, " for ")
		meant, way, _ := strings.Cut(rest, ", ")
		if meant == "pi" {
			meant = piTo35
		}
		a, ok := new(big.Rat).SetString(taken)
		b, good := new(big.Rat).SetString(meant)
		if !ok || !good || b.Sign() == 0 {
			return r, "a factor is written as: with 0.167 for 1/6, exact"
		}
		r.factor, text = a.Quo(a, b), way
	}
	way, rest, _ := strings.Cut(text, " ")
	r.way = way
	switch way {
	case "exact", "range", "wrong":
	case "nearest", "cut", "up":
		if rest == "" {
			return r, ""
		}
		step, ok := new(big.Rat).SetString(rest)
		if !ok || step.Sign() <= 0 {
			return r, "not a step to round to: " + rest
		}
		r.step = step
		return r, ""
	case "rule":
		r.off = rest
		return r, ""
	default:
		return r, "rounding is exact, nearest, cut, up, range, rule or wrong"
	}
	if rest != "" {
		return r, "nothing stands after " + way
	}
	return r, ""
}

// name is what the README counts the row under.
func (r rounding) name() string {
	if r.factor != nil {
		return "with a factor of its own, " + r.way
	}
	return r.way
}

// check says what speaks against the printed figure, from low to high and with so
// many places, as the exact one rounded in this way.
func (r rounding) check(low, high, exact *big.Rat, places int) (wrong string) {
	last := new(big.Rat).SetFrac(big.NewInt(1), new(big.Int).Exp(big.NewInt(10), big.NewInt(int64(places)), nil))
	if r.factor != nil {
		exact = new(big.Rat).Mul(exact, r.factor)
	}
	step := r.step
	if step == nil {
		step = last
	}
	switch r.way {
	case "exact":
		return differs(low, exact)
	case "nearest", "cut", "up":
		if r.factor == nil && low.Cmp(exact) == 0 {
			return "it is exact, and the row is to say so"
		}
		return differs(low, toStep(exact, step, r.way))
	case "range":
		if to := toStep(exact, last, "nearest"); to.Cmp(low) < 0 || to.Cmp(high) > 0 {
			return "it lies outside"
		}
		return ""
	}
	for _, way := range []string{"nearest", "cut"} {
		if low.Cmp(toStep(exact, last, way)) == 0 {
			return "the row is to say how it was rounded: " + way
		}
	}
	if off := percentOff(low, exact); r.way == "rule" && off != r.off {
		return fmt.Sprintf("the rule is off by %s, the row says %s", off, r.off)
	}
	return ""
}

func differs(printed, rounded *big.Rat) string {
	if printed.Cmp(rounded) == 0 {
		return ""
	}
	return "rounded so it is " + rounded.FloatString(9)
}

// toStep rounds a figure that is not below zero; half is rounded up.
func toStep(v, step *big.Rat, way string) *big.Rat {
	q := new(big.Rat).Quo(v, step)
	if way == "nearest" {
		q.Add(q, big.NewRat(1, 2))
	}
	n, rest := new(big.Int).QuoRem(q.Num(), q.Denom(), new(big.Int))
	if way == "up" && rest.Sign() > 0 {
		n.Add(n, big.NewInt(1))
	}
	return q.Mul(new(big.Rat).SetInt(n), step)
}

// percentOff is how far the printed figure is from the exact one, in tenths of a
// percent of the exact one.
func percentOff(printed, exact *big.Rat) string {
	off := new(big.Rat).Sub(printed, exact)
	off.Quo(off.Abs(off), exact)
	return off.Mul(off, big.NewRat(100, 1)).FloatString(1) + "%"
}

func TestPublishedRounding(t *testing.T) {
	for _, test := range []struct {
		printed, exact, rounding string
		places                   int
		ok                       bool
	}{
		{"25", "25", "exact", 0, true},
		{"25", "25.0001", "exact", 0, false},
		{"0.926", "25/27", "nearest", 3, true},
		{"0.925", "25/27", "nearest", 3, false},
		{"0.925", "25/27", "cut", 3, true},
		{"0.9", "0.9", "nearest", 1, false}, // it is exact
		{"41", "40.5", "nearest", 0, true},
		{"40", "40.5", "nearest", 0, false},
		{"40", "40.5", "cut", 0, true},
		{"9", "250/27", "cut 1/2", 0, true},
		{"9.5", "250/27", "nearest 1/2", 1, true},
		{"9", "250/27", "nearest 1/2", 0, false},
		{"38970", "38965.8", "nearest 10", 0, true},
		{"9", "80/9", "up", 0, true},
		{"6.68", "20/3", "with 0.167 for 1/6, exact", 2, true},
		{"6.67", "20/3", "with 0.167 for 1/6, exact", 2, false},
		{"1738", piTo35, "with 22/7 for pi, nearest", 0, false},
		{"3.14", "22/7", "rule 0.1%", 2, false}, // it is cut
		{"3", "27/10", "rule 11.1%", 0, false},  // it is rounded
		{"4", "27/10", "rule 48.1%", 0, true},
		{"4", "27/10", "rule 48.0%", 0, false},
		{"10.67", "32/27", "wrong", 2, true},
		{"1.18", "32/27", "wrong", 2, false}, // it is cut
	} {
		r, wrong := parseRounding(test.rounding)
		if wrong != "" {
			t.Fatalf("parseRounding(%q): %s", test.rounding, wrong)
		}
		printed := decimal(test.printed).rat
		wrong = r.check(printed, printed, decimal(test.exact).rat, test.places)
		if (wrong == "") != test.ok {
			t.Errorf("%s printed for %s, %s: %q, want ok = %t", test.printed, test.exact, test.rounding, wrong, test.ok)
		}
	}
	r, _ := parseRounding("range")
	for exact, ok := range map[string]bool{"2.7": true, "2.844": true, "2.69": false, "2.846": false} {
		wrong := r.check(decimal("2.7").rat, decimal("2.84").rat, decimal(exact).rat, 2)
		if (wrong == "") != ok {
			t.Errorf("%s within 2.7 to 2.84: %q, want ok = %t", exact, wrong, ok)
		}
	}
	for _, text := range []string{"", "0.5", "about", "nearest 0", "exact 1", "with 3 for 0, exact"} {
		if _, wrong := parseRounding(text); wrong == "" {
			t.Errorf("parseRounding(%q) is read, want it refused", text)
		}
	}
}
