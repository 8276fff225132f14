package json

import (
	"slices"
	"strconv"
	"unicode/utf8"
)

// Writer appends one JSON document to a buffer. In containers at depth 1 and 2
// each member has its own line, deeper ones stay on one line. The zero value is
// ready to use. Apart from growing its buffer it allocates nothing. A Writer is
// for one goroutine at a time.
//
// A call that would break the document, such as a second Key or an End without
// its Begin, panics: that is a mistake in the calling code.
type Writer struct {
	full  [][]byte // blocks of a large document that come before buf
	buf   []byte
	open  []level // containers not ended yet, outermost first
	keyed bool    // a key waits for its value
}

// level is a container that is open.
type level struct{ object, filled bool }

// block is from how many bytes on a document is kept in blocks. A single buffer that
// grows leaves every smaller one behind, and a browser's memory never gets smaller:
// a large document took four times its size.
const block = 1 << 20

// lines is the depth down to which members have lines of their own.
const lines = 2

// Reset starts a new document that overwrites buf, whatever its length, and
// grows it when needed. Reset(nil) starts with a new buffer.
func (w *Writer) Reset(buf []byte) {
	w.full, w.buf, w.open, w.keyed = nil, buf[:0], w.open[:0], false
}

// Bytes returns the document, which ends in a newline. The bytes belong to the
// Writer until the next Reset. Bytes panics when the document is not complete.
func (w *Writer) Bytes() []byte {
	if len(w.open) > 0 {
		panic("json: Bytes before the last container has ended")
	}
	if len(w.buf) == 0 {
		panic("json: Bytes without a value")
	}
	if w.full != nil {
		w.buf, w.full = slices.Concat(append(w.full, w.buf)...), nil
	}
	return w.buf
}

// BeginObject starts an object. Fill it with Key and a value, in turn.
func (w *Writer) BeginObject() { w.begin('{', true) }

// EndObject ends the object started last.
func (w *Writer) EndObject() { w.end('}', true) }

// BeginArray starts an array. Fill it with values.
func (w *Writer) BeginArray() { w.begin('[', false) }

// EndArray ends the array started last.
func (w *Writer) EndArray() { w.end(']', false) }

// Key writes the key of the next value. It does not check for an earlier key of
// the same name, which Parse would refuse.
func (w *Writer) Key(key string) {
	if len(w.open) == 0 || !w.open[len(w.open)-1].object {
		panic("json: Key outside of an object")
	}
	if w.keyed {
		panic("json: Key after Key, without a value between them")
	}
	w.member()
	w.buf = append(appendString(w.buf, key), ": "...)
	w.keyed = true
}

// String writes text as a string. A byte that is not UTF-8 becomes U+FFFD.
func (w *Writer) String(text string) {
	w.value()
	w.buf = appendString(w.buf, text)
	w.finish()
}

// Int writes a whole number. JavaScript cannot read those beyond 2^53 exactly.
func (w *Writer) Int(n int64) {
	w.value()
	w.buf = strconv.AppendInt(w.buf, n, 10)
	w.finish()
}

// Raw writes the literal of a number unchanged. It panics when number is not
// one.
func (w *Writer) Raw(number string) {
	if number == "" || numberLength(number) != len(number) {
		panic("json: Raw of \"" + cut(number) + "\", which is not a JSON number")
	}
	w.value()
	w.buf = append(w.buf, number...)
	w.finish()
}

// Bool writes true or false.
func (w *Writer) Bool(b bool) {
	w.value()
	w.buf = strconv.AppendBool(w.buf, b)
	w.finish()
}

// Null writes null.
func (w *Writer) Null() {
	w.value()
	w.buf = append(w.buf, "null"...)
	w.finish()
}

// begin writes an opening bracket.
func (w *Writer) begin(bracket byte, object bool) {
	w.value()
	w.buf = append(w.buf, bracket)
	w.open = append(w.open, level{object: object})
}

// end writes a closing bracket, on its own line where the members have theirs.
func (w *Writer) end(bracket byte, object bool) {
	top := len(w.open) - 1
	switch {
	case top < 0:
		panic("json: End without Begin")
	case w.open[top].object != object:
		panic("json: EndArray of an object, or EndObject of an array")
	case w.keyed:
		panic("json: EndObject after Key, without a value between them")
	}
	if w.open[top].filled && len(w.open) <= lines {
		w.newLine(top)
	}
	w.open = w.open[:top]
	w.buf = append(w.buf, bracket)
	w.finish()
}

// value prepares for a value in any place.
func (w *Writer) value() {
	switch top := len(w.open) - 1; {
	case top < 0 && len(w.buf) > 0:
		panic("json: a second value at the top of the document")
	case top < 0:
	case !w.open[top].object:
		w.member()
	case !w.keyed:
		panic("json: a value in an object, without Key before it")
	}
	w.keyed = false
}

// member writes what goes between the last member and the next one.
func (w *Writer) member() {
	in := &w.open[len(w.open)-1]
	if in.filled {
		w.buf = append(w.buf, ',')
	}
	if len(w.open) <= lines {
		w.newLine(len(w.open))
	} else if in.filled {
		w.buf = append(w.buf, ' ')
	}
	in.filled = true
}

// newLine starts a line, indented by two spaces for each level.
func (w *Writer) newLine(indent int) {
	w.buf = append(w.buf, '\n')
	for range indent {
		w.buf = append(w.buf, "  "...)
	}
}

// finish adds the newline once the value at the top is complete. Before that, it
// starts another block where one is full.
func (w *Writer) finish() {
	switch {
	case len(w.open) == 0:
		w.buf = append(w.buf, '\n')
	case len(w.buf) >= block:
		w.full, w.buf = append(w.full, w.buf), make([]byte, 0, block+block/16)
	}
}

// appendString appends text in quotes.
func appendString(buf []byte, text string) []byte {
	buf = append(buf, '"')
	buf = appendInside(buf, text)
	return append(buf, '"')
}

// appendInside appends text as it is written inside quotes.
func appendInside(buf []byte, text string) []byte {
	from := 0
	for i, r := range text {
		if r != utf8.RuneError && !mustEscape(r) {
			continue
		}
		buf = append(buf, text[from:i]...)
		_, n := utf8.DecodeRuneInString(text[i:])
		from = i + n
		buf = appendEscape(buf, r)
	}
	return append(buf, text[from:]...)
}

// mustEscape reports whether a character must be escaped: by RFC 8259, or
// because it could end a script element or a line of a script. So a document
// can be put into a page as it is.
func mustEscape(r rune) bool {
	switch r {
	case '"', '\\', '<', '>', '&', '\u2028', '\u2029':
		return true
	}
	return r < ' '
}

// appendEscape appends the shortest escape for r, or r itself where it needs
// none.
func appendEscape(buf []byte, r rune) []byte {
	switch r {
	case '"', '\\':
		return append(buf, '\\', byte(r))
	case '\b':
		return append(buf, `\b`...)
	case '\f':
		return append(buf, `\f`...)
	case '\n':
		return append(buf, `\n`...)
	case '\r':
		return append(buf, `\r`...)
	case '\t':
		return append(buf, `\t`...)
	}
	if mustEscape(r) {
		return appendHex(buf, r)
	}
	return utf8.AppendRune(buf, r)
}

// appendHex appends r as a \u escape. It is for runes of at most 16 bits.
func appendHex(buf []byte, r rune) []byte {
	const hex = "0123456789abcdef"
	return append(buf, '\\', 'u', hex[r>>12&15], hex[r>>8&15], hex[r>>4&15], hex[r&15])
}
