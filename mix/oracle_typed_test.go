package mix_test

import (
	"math"
	"math/big"
	"strconv"

	"pgregory.net/rapid"
)

// A scale writes n of size as text.
type scale struct {
	size  exact
	write func(n int64, style int) string
}

func mixed(size string, den int64, unit string) scale {
	return scale{decimal(size).over(exactly(den, 1)), func(n int64, style int) string {
		return fraction(n, den, style) + " " + unit
	}}
}

func places(size string, digits int, unit string) scale {
	den := int64(math.Pow10(digits))
	return scale{decimal(size).over(exactly(den, 1)), func(n int64, _ int) string {
		return big.NewRat(n, den).FloatString(digits) + " " + unit
	}}
}

// fraction writes n/den as people do: 3 1/2, 3-1/2, 3½, 1/2.
func fraction(n, den int64, style int) string {
	r := big.NewRat(n%den, den)
	if r.Sign() == 0 {
		return strconv.FormatInt(n/den, 10)
	}
	text, joint := r.String(), []string{" ", "-", " "}[style]
	glyphs := map[string]string{"1/2": "½", "1/4": "¼", "3/4": "¾", "1/3": "⅓", "2/3": "⅔", "3/8": "⅜"}
	if glyph := glyphs[text]; glyph != "" && style == 2 {
		text, joint = glyph, ""
	}
	if n < den {
		return text
	}
	return strconv.FormatInt(n/den, 10) + joint + text
}

var (
	lengths = []scale{
		mixed("25.4", 16, "in"), mixed("25.4", 3, "in"), places("25.4", 2, "in"), places("304.8", 2, "ft"), mixed("304.8", 4, "ft"),
		places("1", 0, "mm"), places("10", 2, "cm"), places("1000", 3, "m"), mixed("914.4", 4, "yd"), {decimal("12.7"), feetAndInches},
	}
	areas = []scale{
		places("92903.04", 1, "sq ft"), places("1000000", 2, "sq m"), mixed("836127.36", 3, "sq yd"), places("645.16", 0, "sq in"),
	}
	volumes = []scale{
		places("28316846.592", 2, "cu ft"), mixed("28316846.592", 4, "cu ft"), places("1000000", 1, "L"), places("1000", 0, "mL"),
		mixed("3785411.784", 8, "gal"), places("16387.064", 2, "cu in"), mixed("764554857.984", 3, "cu yd"), places("764554857.984", 2, "yd3"),
		mixed("1101220.9427150", 2, "dry qt"), mixed("35239070.16688", 4, "bu"), places("4546090", 1, "imp gal"), places("1000000000", 3, "m3"),
	}
)

func feetAndInches(halves int64, style int) string {
	feet, rest := halves/24, halves%24
	if feet == 0 || rest == 0 {
		return fraction(halves, 2, style) + " in"
	}
	return strconv.FormatInt(feet, 10) + " ft " + fraction(rest, 2, style) + " in"
}

// typedOn draws a quantity from low to high on one of the scales that have one.
func typedOn(t *rapid.T, label string, scales []scale, low, high float64) typed {
	var fit []scale
	for _, s := range scales {
		if math.Ceil(low/s.size.float()) <= math.Floor(high/s.size.float()) {
			fit = append(fit, s)
		}
	}
	if len(fit) == 0 {
		t.Fatalf("no %s from %v to %v", label, low, high)
	}
	s := fit[rapid.IntRange(0, len(fit)-1).Draw(t, label+" unit")]
	n := rapid.Int64Range(int64(math.Ceil(low/s.size.float())), int64(math.Floor(high/s.size.float()))).Draw(t, label)
	return typed{s.write(n, rapid.IntRange(0, 2).Draw(t, label+" style")), s.size.taken(n)}
}

func typedLength(t *rapid.T, label string, low, high float64) typed {
	return typedOn(t, label, lengths, low, high)
}

func typedVolume(t *rapid.T, label string, low, high float64) typed {
	return typedOn(t, label, volumes, low, high)
}

func drawShare(t *rapid.T, label string, low, high int64) typed {
	tenths := rapid.Int64Range(low*10, high*10).Draw(t, label)
	value := exactly(tenths, 1000)
	switch rapid.IntRange(0, 3).Draw(t, label+" style") {
	case 0:
		if !value.rat.IsInt() { // a bare whole number is refused: 1 might mean 1%
			return typed{value.rat.FloatString(3), value}
		}
	case 1:
		if tenths%10 == 0 {
			return typed{strconv.FormatInt(tenths/10, 10) + " percent", value}
		}
	case 2:
		if !value.rat.IsInt() {
			return typed{value.rat.String(), value}
		}
	}
	return typed{value.taken(100).rat.FloatString(1) + "%", value}
}

// maybeShare leaves the share out as often as not, and makes it zero often.
func maybeShare(t *rapid.T, label string, high int64) *typed {
	switch rapid.IntRange(0, 3).Draw(t, label+" given") {
	case 0, 1:
		return nil
	case 2:
		return &typed{"0%", exactly(0, 1)}
	}
	s := drawShare(t, label, 0, high)
	return &s
}

func often(t *rapid.T, label string) bool { return rapid.Bool().Draw(t, label) }
