package message

import (
	"strings"
	"testing"
	"unicode"
)

// shout is a language for tests: loud, and with commas in figures.
type shout struct{}

func (shout) Form(s string) string {
	if s == "{0} of {1}" {
		return "{1}, {0} IN ALL"
	}
	return strings.ToUpper(s)
}
func (shout) Figure(s string) string { return strings.ReplaceAll(s, ".", ",") }

func TestPhrase(t *testing.T) {
	for _, tt := range []struct {
		why           string
		in            Text
		english, loud string
	}{
		{"nothing", "", "", ""},
		{"a constant", "no limit is given", "no limit is given", "NO LIMIT IS GIVEN"},
		{"braces that are no hole", `such as {"peat": 1} or { }, {a}, {-1}, {0`, `such as {"peat": 1} or { }, {a}, {-1}, {0`, `SUCH AS {"PEAT": 1} OR { }, {A}, {-1}, {0`},
		{"a text stays", Of("no task takes {0}", "peat 1.5"), "no task takes peat 1.5", "NO TASK TAKES peat 1.5"},
		{"a figure is the reader's", Of("at most {#0}", "1.5 L"), "at most 1.5 L", "AT MOST 1,5 L"},
		{"a phrase inside", Of("write {=0}, not {=1}", "a length", string(Of("a {0}", "b"))), "write a length, not a b", "WRITE A LENGTH, NOT A b"},
		{"another order", Of("{0} of {1}", "3", "5"), "3 of 5", "5, 3 IN ALL"},
		{"a hole twice", Of("{0} and {0}", "a"), "a and a", "a AND a"},
		{"a hole without a text", Of("{0} and {1}", "a"), "a and ", "a AND "},
		{"a hole at the end", Of("to {0}", "b"), "to b", "TO b"},
		{"text that looks like a hole", Of("{0}{1}", "{1}", "x"), "{1}x", "{1}x"},
		{"text with the signs of a phrase", Of("no {0}", "\x02a\x1fb\x03"), "no \uFFFDa\uFFFDb\uFFFD", "NO \uFFFDa\uFFFDb\uFFFD"},
		{"text with an escape and a mark", Of("no {0}", "a\u009b31mb\u202ec"), "no a\uFFFD31mb\uFFFDc", "NO a\uFFFD31mb\uFFFDc"},
		{"an empty text", Of("no {0}.", ""), "no .", "NO ."},
	} {
		if got := tt.in.String(); got != tt.english {
			t.Errorf("%s: %q, want %q", tt.why, got, tt.english)
		}
		if got := tt.in.In(shout{}); got != tt.loud {
			t.Errorf("%s: %q, want %q", tt.why, got, tt.loud)
		}
	}
}

// TestIsControl compares every code point with the classes of Unicode that package
// unicode has.
func TestIsControl(t *testing.T) {
	for r := range unicode.MaxRune + 1 {
		want := unicode.In(r, unicode.Cc, unicode.Zl, unicode.Zp, unicode.Bidi_Control)
		if IsControl(r) != want {
			t.Errorf("%U: %v, want %v", r, !want, want)
		}
	}
}

func TestHoles(t *testing.T) {
	for _, same := range [][2]string{{"{0} of {1}", "{1} de {0}"}, {"{0}", "{0} {0}"}, {"none", `{"a": 1}`}} {
		if Holes(same[0]) != Holes(same[1]) {
			t.Errorf("%q and %q differ in holes", same[0], same[1])
		}
	}
	for _, other := range [][2]string{
		{"{0}", "{1}"}, {"{0}", "{#0}"}, {"{0}", "{=0}"}, {"{0}", "none"}, {"{#0}", "{=0}"}, {"{9}", "{#0}x"},
	} {
		if Holes(other[0]) == Holes(other[1]) {
			t.Errorf("%q and %q have the same holes", other[0], other[1])
		}
	}
}

// FuzzPhrase checks that a sentence contains its form and what was typed,
// whatever that is, and that no part of it is taken for a sentence of its own.
func FuzzPhrase(f *testing.F) {
	for _, s := range []string{"", "peat", "\x02x\x1f\x03", "{0}", "{=0}", "\x03\x03"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		inner := Of("<{0}>", s)
		if got, want := Of("a {=0} b {1}", string(inner), s).String(), "a <"+clean(s)+"> b "+clean(s); got != want {
			t.Errorf("%q, want %q", got, want)
		}
		_ = Text(s).In(shout{}) // no panic, whatever it is
	})
}
