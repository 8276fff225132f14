package json

import (
	"strconv"
	"strings"
	"unicode/utf8"

	"example.org/barrow/units/message"
)

// number reads the number at p.at and keeps its literal: the caller knows best
// whether 1.50 is money, a count or a measure.
func (p *parser) number(text *string) bool {
	rest := p.text[p.at:]
	n := numberLength(rest)
	if n == 0 || continues(rest[n:]) {
		word := p.lexeme()
		return p.fail(Syntax, p.at, p.at+len(word), notNumber(word))
	}
	*text = rest[:n]
	p.at += n
	return true
}

// numberLength returns the length of the number that text starts with, or 0.
func numberLength(text string) int {
	i := 0
	if strings.HasPrefix(text, "-") {
		i = 1
	}
	whole := digits(text[i:])
	if whole == 0 {
		return 0
	}
	if text[i] == '0' {
		whole = 1
	}
	i += whole
	if strings.HasPrefix(text[i:], ".") {
		if n := digits(text[i+1:]); n > 0 {
			i += 1 + n
		}
	}
	return i + exponentLength(text[i:])
}

// exponentLength returns the length of the exponent that text starts with, or
// 0.
func exponentLength(text string) int {
	if text == "" || text[0]|0x20 != 'e' {
		return 0
	}
	i := 1
	if len(text) > 1 && (text[1] == '+' || text[1] == '-') {
		i = 2
	}
	n := digits(text[i:])
	if n == 0 {
		return 0
	}
	return i + n
}

// digits counts the digits that text starts with.
func digits(text string) int {
	n := 0
	for n < len(text) && isDigit(text[n]) {
		n++
	}
	return n
}

// continues reports whether text, which follows a number, was probably meant as
// part of it: the L of 50L, the second point of 1.2.3, the half of 1½.
func continues(text string) bool {
	if text == "" || isComment(text) {
		return false
	}
	if c := text[0]; c < utf8.RuneSelf {
		return isLetter(c) || isDigit(c) || strings.IndexByte("._+-%/", c) >= 0
	}
	r, _ := utf8.DecodeRuneInString(text)
	return strconv.IsPrint(r)
}

// notNumber returns why word, which starts like a number, is not one.
func notNumber(word string) message.Text {
	size := strings.TrimLeft(word, "+-")
	sign := word[:len(word)-len(size)]
	switch {
	case size == "":
		return "a sign needs a number right after it"
	case notFinite(size):
		return noSuchNumber(word)
	case len(sign) > 1:
		return writeNumber("a number has at most one sign", sign[:1]+size)
	case sign == "+":
		return writeNumber("a number has no plus sign", size)
	}
	return badDigits(sign, size)
}

// badDigits returns what is wrong with the digits of a number.
func badDigits(sign, size string) message.Text {
	switch n := numberLength(size); {
	case size[0] == '.':
		return writeNumber("a number needs a digit before its point", sign+"0"+size)
	case digits(size) > 1 && size[0] == '0':
		return writeNumber("a number has no zeros in front", sign+unpadded(size))
	case strings.Contains(size, "_"):
		return writeNumber("the digits of a number are not grouped", sign+without(size, '_'))
	case len(size) > 1 && size[0] == '0' && size[1]|0x20 == 'x':
		return "a number is written in decimal digits"
	case n > 0 && size[n:] == ".":
		return writeNumber("a number needs a digit after its point", sign+size[:n])
	case n > 0 && strings.TrimRight(lower(size[n:]), "+-") == "e":
		return writeNumber("an exponent needs digits", sign+size[:n])
	}
	return inQuotes(notPlain, sign+size)
}

// notPlain is the reason for a number with a unit or a fraction.
const notPlain message.Text = "this is more than a number; a unit or a fraction makes it text, in double quotes"

// unpadded removes the zeros before a number's first digit.
func unpadded(size string) string {
	n := digits(size)
	return size[min(n-1, n-len(strings.TrimLeft(size[:n], "0"))):]
}

// without removes every unwanted rune.
func without(text string, unwanted rune) string {
	return strings.Map(func(r rune) rune {
		if r == unwanted {
			return -1
		}
		return r
	}, text)
}

// lower is strings.ToLower for ASCII. It is used for English words only, and
// the tables for the rest of Unicode would enlarge the download.
func lower(text string) string {
	return strings.Map(func(r rune) rune {
		if 'A' <= r && r <= 'Z' {
			return r + 'a' - 'A'
		}
		return r
	}, text)
}

// notFinite reports whether word is a name for a number that JSON does not
// have.
func notFinite(word string) bool {
	switch lower(word) {
	case "nan", "inf", "infinity":
		return true
	}
	return false
}

// noSuchNumber is the reason for such a word.
func noSuchNumber(word string) message.Text {
	return message.Of("JSON has no number {0}; write null, or leave it out", excerpt(word))
}

// writeNumber adds to a reason the advice to write text, unless that would not
// be a number either.
func writeNumber(reason message.Text, text string) message.Text {
	if numberLength(text) != len(text) || len(text) > shown {
		return reason
	}
	return message.Of("{=0}; write {1}", string(reason), text)
}

// inQuotes adds to a reason what the text would look like in double quotes,
// unless it is too long or too odd to repeat.
func inQuotes(reason message.Text, text string) message.Text {
	if excerpt(text) != text || strings.ContainsAny(text, `"\`) {
		return reason
	}
	return message.Of(`{=0}: "{1}"`, string(reason), text)
}
