package json

import (
	"unicode/utf8"

	"example.org/barrow/units/message"
)

// quoted reads the string at p.at. A string without escapes is a slice of the
// document; one with escapes is decoded in the scratch buffer and copied out.
func (p *parser) quoted(text *string) bool {
	open := p.at
	end := plainEnd(p.text, open+1)
	if end < len(p.text) && p.text[end] == '"' {
		*text = p.text[open+1 : end]
		p.at = end + 1
		return true
	}
	p.scratch = append(p.scratch[:0], p.text[open+1:end]...)
	for p.at = end; p.at < len(p.text); {
		switch c := p.text[p.at]; {
		case c == '"':
			*text = string(p.scratch)
			p.at++
			return true
		case c != '\\':
			return p.control(open)
		case !p.escape(open):
			return false
		}
		from := p.at
		p.at = plainEnd(p.text, from)
		p.scratch = append(p.scratch, p.text[from:p.at]...)
	}
	return p.fail(Syntax, open, len(p.text), "this text has no end; close it with a double quote")
}

// plainEnd returns the offset of the first byte, from i on, that does not stand
// for itself in a string, or the length of text.
func plainEnd(text string, i int) int {
	for i < len(text) && text[i] >= ' ' && text[i] != '"' && text[i] != '\\' {
		i++
	}
	return i
}

// control refuses the control character at p.at. A line break almost always
// means that the closing quote is missing, so that fault is placed where the
// string begins, at open.
func (p *parser) control(open int) bool {
	c := p.text[p.at]
	if c == '\n' || c == '\r' {
		return p.fail(Syntax, open, p.at,
			`this text does not end on its line; close it with a double quote, or write \n for a line break`)
	}
	form := message.Text("{0} inside text is written {1}")
	if c == '\t' {
		form = "a tab inside text is written {1}"
	}
	return p.fail(Syntax, p.at, p.at+1, message.Of(form, codePoint(rune(c)), string(appendEscape(nil, rune(c)))))
}

// escapes lists each letter that may follow a backslash, followed by what the
// two mean.
const escapes = "\"\"\\\\//b\bf\fn\nr\rt\t"

// escape decodes the escape at p.at into the scratch buffer.
func (p *parser) escape(open int) bool {
	rest := p.text[p.at:]
	if len(rest) == 1 {
		return p.fail(Syntax, open, len(p.text), "this text has no end; close it with a double quote")
	}
	if rest[1] == 'u' {
		return p.hexEscape()
	}
	for i := 0; i < len(escapes); i += 2 {
		if escapes[i] == rest[1] {
			p.scratch = append(p.scratch, escapes[i+1])
			p.at += 2
			return true
		}
	}
	_, n := utf8.DecodeRuneInString(rest[1:])
	return p.fail(Syntax, p.at, p.at+1+n, `a backslash is written \\; followed by this character it means nothing`)
}

// hexLength is the length of a \u escape.
const hexLength = len(`\u0000`)

// hexEscape decodes a \u escape, or the two that make up a surrogate pair.
func (p *parser) hexEscape() bool {
	rest := p.text[p.at:]
	r, ok := hexValue(rest)
	if !ok {
		return p.fail(Syntax, p.at, p.at+len(p.lexeme()), `\u needs four hexadecimal digits, as in \u00bd`)
	}
	n := hexLength
	if isSurrogate(r) {
		low, _ := hexValue(rest[n:])
		if r = pair(r, low); r == 0 {
			return p.fail(UTF8, p.at, p.at+n, "half a character: this escape needs its other half next to it")
		}
		n += hexLength
	}
	p.scratch = utf8.AppendRune(p.scratch, r)
	p.at += n
	return true
}

// hexValue returns the value of the \u escape that text starts with.
func hexValue(text string) (rune, bool) {
	if len(text) < hexLength || text[:2] != `\u` {
		return 0, false
	}
	var r rune
	for _, c := range []byte(text[2:hexLength]) {
		switch {
		case isDigit(c):
			c -= '0'
		case 'a' <= c|0x20 && c|0x20 <= 'f':
			c = c | 0x20 - 'a' + 10
		default:
			return 0, false
		}
		r = r<<4 | rune(c)
	}
	return r, true
}

// isSurrogate reports whether r is half of a pair.
func isSurrogate(r rune) bool { return 0xd800 <= r && r < 0xe000 }

// pair returns the character that two surrogates stand for, or 0 when they are
// not a pair.
func pair(high, low rune) rune {
	if high >= 0xdc00 || low < 0xdc00 || low >= 0xe000 {
		return 0
	}
	return (high-0xd800)<<10 | (low - 0xdc00) + 0x10000
}
