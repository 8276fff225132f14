package spell

import (
	"strings"
	"testing"
	"unicode"
)

// TestLetters compares the letters of English and Spanish with package unicode.
func TestLetters(t *testing.T) {
	for r := rune(0); r < 0x100; r++ {
		if r == 'µ' || r == 'ÿ' || r == 'ª' || r == 'º' { // their capitals are of other scripts; raised letters
			continue
		}
		if got, want := Small(r), unicode.ToLower(r); got != want {
			t.Errorf("Small(%q) = %q, want %q", r, got, want)
		}
		if got, want := Capital(r), unicode.ToUpper(r); got != want {
			t.Errorf("Capital(%q) = %q, want %q", r, got, want)
		}
		if got, want := Letter(r), unicode.IsLetter(r); got != want {
			t.Errorf("Letter(%q) = %v, want %v", r, got, want)
		}
	}
	for _, currency := range []string{
		"$", "US$", "€", "£", "¥", "₹", "₱", "R$", "kr", "zł", "Kč", "Ft", "лв", "₡", "S/", "Bs", "Lps", "\uFFFD",
	} {
		runes := []rune(currency)
		last := runes[len(runes)-1]
		if got, want := Letter(last), unicode.IsLetter(last); got != want {
			t.Errorf("Letter(%q) = %v, want %v", last, got, want)
		}
	}
	for _, s := range []string{"", "Peat", "CÍRCULO", "Añil de Ávila", "½ × 3"} {
		if got, want := Lower(s), strings.ToLower(s); got != want {
			t.Errorf("Lower(%q) = %q, want %q", s, got, want)
		}
	}
}
