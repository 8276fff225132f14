package spell

import "strings"

// These functions know the letters of English and Spanish: ASCII and Latin-1.
// Package unicode has tables for every script, and strings.ToLower brings them
// along: 5 kB of the browser's download.

// Lower returns s in small letters.
func Lower(s string) string { return strings.Map(Small, s) }

// Small returns the small letter for a capital, and any other rune unchanged.
func Small(r rune) rune {
	if 'A' <= r && r <= 'Z' || 'À' <= r && r <= 'Þ' && r != '×' {
		r += 'a' - 'A'
	}
	return r
}

// Capital returns the capital for a small letter, and any other rune unchanged.
func Capital(r rune) rune {
	if 'a' <= r && r <= 'z' || 'à' <= r && r <= 'þ' && r != '÷' {
		r -= 'a' - 'A'
	}
	return r
}

// Letter reports whether r is a letter. Beyond Latin-1 it takes every rune
// outside the blocks of signs for one.
func Letter(r rune) bool {
	const signs, letters = 0x2000, 0x2c00 // punctuation, currencies, arrows, shapes
	if r == '\uFFFD' {
		return false // the sign for what is no character
	}
	return Small(r) != r || Capital(r) != r || r == 'ß' || r >= 'ÿ' && (r < signs || r >= letters)
}
