package spell

import "strings"

// Letters are known here as far as English and Spanish go: ASCII and Latin-1.
// Package unicode has the tables for every script, and package strings takes
// them along with ToLower: 5 kB of the browser's download.

// Lower writes s in small letters.
func Lower(s string) string { return strings.Map(Small, s) }

// Small is the small letter of a capital, and anything else itself.
func Small(r rune) rune {
	if 'A' <= r && r <= 'Z' || 'À' <= r && r <= 'Þ' && r != '×' {
		r += 'a' - 'A'
	}
	return r
}

// Capital is the capital of a small letter, and anything else itself.
func Capital(r rune) rune {
	if 'a' <= r && r <= 'z' || 'à' <= r && r <= 'þ' && r != '÷' {
		r -= 'a' - 'A'
	}
	return r
}

// Letter reports whether r is a letter; of other scripts it takes all to be
// letters that are not in the blocks of signs.
func Letter(r rune) bool {
	const signs, letters = 0x2000, 0x2c00 // punctuation, currencies, arrows, shapes
	if r == '\uFFFD' {
		return false // no character at all
	}
	return Small(r) != r || Capital(r) != r || r == 'ß' || r >= 'ÿ' && (r < signs || r >= letters)
}
