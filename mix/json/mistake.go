package json

import (
	"strconv"
	"strings"
	"unicode/utf8"

	"example.org/barrow/units/message"
)

// The functions in this file run only when the document is wrong. They work out
// what its author probably meant, so that the fault can say what to write. None
// of them accepts anything.

// fail stops the parse at the text from start to end. When a document was cut
// at a byte that is not UTF-8 and the fault touches that end, the byte is
// reported instead: it is what the author has to fix first.
func (p *parser) fail(code string, start, end int, reason message.Text) bool {
	p.stopped = true
	value := excerpt(p.text[start:end])
	if p.tail != "" && end == len(p.text) {
		code, start = UTF8, end
		value = "0x" + strconv.FormatInt(int64(p.tail[0]), 16)
		reason = "this byte is not UTF-8; save the file as UTF-8"
	}
	p.record(Fault{Code: code, Value: value, Reason: reason}, start)
	return false
}

// record adds a fault at an offset, with the path being read.
func (p *parser) record(f Fault, offset int) {
	p.last = p.last.advance(p.text, offset)
	f.Path, f.Line, f.Column = p.path(), p.last.line+1, p.last.column+1
	p.faults = append(p.faults, f)
	if len(p.faults) == p.limits.Faults {
		p.stopped = true
	}
}

// path writes the path of the value being read.
func (p *parser) path() string {
	var path []byte
	for _, s := range p.steps {
		switch s.index {
		case stepBetween:
		case stepKey:
			path = appendPathKey(path, s.key)
		default:
			path = appendPathIndex(path, s.index)
		}
	}
	return string(path)
}

// duplicate records that the key just read, at from, repeats the key whose
// value is at first.
func (p *parser) duplicate(from, first int) {
	lines := strings.Count(p.text[first:from], "\n")
	reason := message.Text("this object has the key already, earlier on this line; keep one of the two")
	if lines > 0 {
		line := p.last.advance(p.text, from).line - lines
		reason = message.Of("this object has the key already, on line {0}; keep one of the two", strconv.Itoa(line+1))
	}
	p.record(Fault{
		Code:   Duplicate,
		Value:  excerpt(p.text[from+1 : p.at-1]),
		Reason: reason,
	}, from)
}

// lexeme returns the text at p.at that was probably meant as one word: a
// string, or everything up to a space, a sign of the grammar or a comment.
func (p *parser) lexeme() string {
	rest := p.text[p.at:]
	_, n := utf8.DecodeRuneInString(rest)
	switch {
	case strings.HasPrefix(rest, `"`):
		return rest[:stringEnd(rest, 0)+1]
	case n == 0 || isDelimiter(rest[0]):
		return rest[:n]
	}
	for n < len(rest) && !isDelimiter(rest[n]) && !isComment(rest[n:]) {
		n++
	}
	return rest[:n]
}

// isDelimiter reports whether c ends a word.
func isDelimiter(c byte) bool { return c <= ' ' || strings.IndexByte(`,:[]{}"`, c) >= 0 }

// isComment reports whether text starts a comment of JavaScript.
func isComment(text string) bool {
	return strings.HasPrefix(text, "//") || strings.HasPrefix(text, "/*")
}

// refuse stops the parse at p.at. Some mistakes are the same wherever they
// occur, such as a comment; for those it gives their own reason in place of the
// given one.
func (p *parser) refuse(code string, reason message.Text) bool {
	word := p.lexeme()
	if r := commonMistake(p.text[p.at:]); r != "" {
		word, reason = p.stray(), r
	}
	return p.fail(code, p.at, p.at+len(word), reason)
}

// stray returns how much of a common mistake to show: a comment to the end of
// its line, otherwise the word.
func (p *parser) stray() string {
	rest := p.text[p.at:]
	if !isComment(rest) && rest[0] != '#' {
		return p.lexeme()
	}
	if i := strings.IndexAny(rest, "\r\n"); i >= 0 {
		return rest[:i]
	}
	return rest
}

// commonMistake returns the reason for a mistake that is the same everywhere,
// or "".
func commonMistake(text string) message.Text {
	r, _ := utf8.DecodeRuneInString(text)
	switch {
	case isComment(text), r == '#':
		return "JSON has no comments; take this one out"
	case r == '\'', r == '`':
		return message.Of(`keys and text go in double quotes ("), not in {0}`, string(r))
	case strings.ContainsRune("“”„‟‘’‚‛«»‹›", r):
		return message.Of(`keys and text go in straight double quotes ("), not in {0}`, string(r))
	case strings.ContainsRune("−‐‑‒–—", r):
		return "a minus sign is written as a hyphen: -"
	case r == 0:
		return "the file is damaged, or not in UTF-8; save the file as UTF-8"
	case !strconv.IsPrint(r):
		return message.Of("an invisible character, {0}; put a plain space in its place, or nothing", codePoint(r))
	}
	return ""
}

// missingValue refuses the end of the document where a value should start.
func (p *parser) missingValue() bool {
	if len(p.steps) > 0 || p.tail != "" {
		return p.fail(Syntax, p.at, p.at, "the document ends where a value is expected")
	}
	return p.fail(Empty, 0, 0, "the document is empty")
}

// notValue refuses word where a value should start.
func (p *parser) notValue(word string) bool {
	rest := p.text[p.at:]
	switch c := word[0]; {
	case c == ',' || c == ']' || c == '}':
		return p.refuse(Syntax, "a value is missing before this")
	case c == '+', c == '.' && digits(rest[1:]) > 0:
		return p.refuse(Syntax, notNumber(word))
	case isLetter(c) || c == '_' || c == '$' || c >= utf8.RuneSelf:
		return p.refuse(Syntax, bareWord(word))
	}
	return p.refuse(Syntax, "a value cannot start like this; it is text in double quotes,"+
		" a number, true, false, null, a list in [ ] or an object in { }")
}

// bareWord returns why word, which is not in quotes, is not a value.
func bareWord(word string) message.Text {
	if notFinite(word) {
		return noSuchNumber(word)
	}
	switch small := lower(word); small {
	case "true", "false", "null":
		return message.Of("write {0}, in small letters", small)
	case "none", "nil", "undefined":
		return "write null for no value"
	case "yes", "on":
		return "write true, or put the text in double quotes"
	case "no", "off":
		return "write false, or put the text in double quotes"
	}
	return inQuotes("text is written in double quotes", word)
}

// notKey refuses what is at p.at, where a key of n should start.
func (p *parser) notKey(n *Node) bool {
	reason := message.Text("a key in double quotes is expected here")
	switch word := p.lexeme(); {
	case word == "," || word == ":":
		reason = "a key is missing before this"
	case word == "]":
		reason = p.wrongCloser(n)
	case afterNumber(n) && digits(word) > 0:
		reason = "a key in double quotes is expected here; a decimal comma is written as a point, as in 1.5"
	case isLetter(word[0]) || word[0] == '_' || word[0] == '$' || word[0] >= utf8.RuneSelf:
		reason = inQuotes("a key is written in double quotes", word)
	}
	return p.refuse(Syntax, reason)
}

// notColon refuses what follows a key.
func (p *parser) notColon() bool {
	if p.at == len(p.text) {
		return p.fail(Syntax, p.at, p.at, "the document ends where a colon and a value are expected")
	}
	if strings.HasPrefix(p.text[p.at:], "=") {
		return p.refuse(Syntax, "a key and its value are joined by a colon, not =")
	}
	return p.refuse(Syntax, "a colon is missing between a key and its value")
}

// notComma refuses what follows a member of n.
func (p *parser) notComma(n *Node) bool {
	switch c := p.text[p.at]; {
	case c == ']' || c == '}':
		p.between()
		return p.refuse(Syntax, p.wrongCloser(n))
	case c == ':' && n.Kind == Array:
		return p.refuse(Syntax, "a list has no keys; write an object in { } instead")
	case c == ':':
		return p.refuse(Syntax, "a second colon; a key and its value are joined by one")
	case c == ';':
		return p.refuse(Syntax, "values are separated by a comma, not ;")
	case afterNumber(n) && isMeasure(p.lexeme()):
		number := n.Items[len(n.Items)-1].Text
		return p.refuse(Syntax, inQuotes(notPlain, number+" "+p.lexeme()))
	}
	return p.refuse(Syntax, "a comma is missing before this")
}

// afterNumber reports whether the latest member of n is a number.
func afterNumber(n *Node) bool {
	return len(n.Items) > 0 && n.Items[len(n.Items)-1].Kind == Number
}

// isMeasure reports whether word, found after a number and a space, was
// probably meant as part of it: the L of 50 L, the 1/2 of 1 1/2.
func isMeasure(word string) bool {
	switch word {
	case "true", "false", "null":
		return false
	}
	return continues(word) && numberLength(word) != len(word)
}

// wrongCloser returns why a bracket does not close n.
func (p *parser) wrongCloser(n *Node) message.Text {
	return message.Of("{=0} is closed by {1}, which is missing before this", string(p.opened(n)), closer(n.Kind))
}

// hasMore refuses the end of the document inside n.
func (p *parser) hasMore(n *Node) bool {
	if p.at < len(p.text) {
		return true
	}
	p.between()
	return p.fail(Syntax, p.at, p.at, message.Of("{=0} is not closed when the document ends; add {1}",
		string(p.opened(n)), closer(n.Kind)))
}

// opened names the container n by the line it starts on.
func (p *parser) opened(n *Node) message.Text {
	line := p.last.advance(p.text, n.Offset).line
	form := message.Text("the object that starts on line {0}")
	if n.Kind == Array {
		form = "the list that starts on line {0}"
	}
	return message.Of(form, strconv.Itoa(line+1))
}

// closer is the bracket that closes a container.
func closer(k Kind) string {
	if k == Array {
		return "]"
	}
	return "}"
}

// trailing refuses what follows the value at the top, which ended at end.
func (p *parser) trailing(end int) bool {
	reason := message.Of("the document ends with its first value, on line {0}; take out what follows",
		strconv.Itoa(p.last.advance(p.text, end).line+1))
	switch word := p.lexeme(); word {
	case "]", "}":
		reason = message.Of("one closing bracket too many; take this {0} out", word)
	case ",":
		reason = "nothing follows the last value; take this comma out"
	}
	return p.refuse(Trailing, reason)
}
