package units

import (
	"strconv"
	"testing"
)

// TestQuoted compares quoted with strconv, except for the names of control
// characters.
func TestQuoted(t *testing.T) {
	for _, s := range []string{"", `3"`, `a\b`, "it's", "½ × 3", "a\u00adb", "\u200b", "\ufeff", "\U000e0001", "日本"} {
		if got, want := quoted(s, '"'), strconv.Quote(s); got != want {
			t.Errorf("quoted(%q) = %s, want %s", s, got, want)
		}
	}
	for r := rune(0x80); r < 0x3000; r++ {
		if got, want := quoted(string(r), '\''), strconv.QuoteRune(r); got != want {
			t.Errorf("quoted(%q) = %s, want %s", r, got, want)
		}
	}
	if got, want := quoted("a\nb", '"'), `"a\u000ab"`; got != want {
		t.Errorf("%s, want %s", got, want)
	}
}
