package json

import (
	"strconv"
	"unicode/utf8"
)

// shown is how many runes of the user's text a fault repeats.
const shown = 40

// PathKey returns the path of member key of the object at path: "a" and "b"
// give "a.b". A key that is not a plain word of at most 40 characters is quoted
// as in JSON and cut to 40 runes, as in `a["odd key"]`, so that a path stays
// one short line whatever the document holds.
func PathKey(path, key string) string {
	return string(appendPathKey([]byte(path), key))
}

// PathIndex returns the path of element i, counted from 0, of the array at
// path: "a" and 1 give "a[1]".
func PathIndex(path string, i int) string {
	return string(appendPathIndex([]byte(path), i))
}

// appendPathKey is PathKey for a path that is still being written.
func appendPathKey(path []byte, key string) []byte {
	if !plainWord(key) {
		path = append(path, '[')
		path = appendVisible(path, cut(key))
		return append(path, ']')
	}
	if len(path) > 0 {
		path = append(path, '.')
	}
	return append(path, key...)
}

// appendPathIndex is PathIndex for a path that is still being written.
func appendPathIndex(path []byte, i int) []byte {
	path = append(path, '[')
	path = strconv.AppendInt(path, int64(i), 10)
	return append(path, ']')
}

// plainWord reports whether a path can contain key without quotes.
func plainWord(key string) bool {
	if key == "" || len(key) > shown || isDigit(key[0]) || key[0] == '-' {
		return false
	}
	for i := range len(key) {
		if c := key[i]; !isLetter(c) && !isDigit(c) && c != '_' && c != '-' {
			return false
		}
	}
	return true
}

// appendVisible quotes text as JSON does, and also escapes what is invisible: a
// path is printed on terminals, and two keys may differ in nothing else.
func appendVisible(buf []byte, text string) []byte {
	buf = append(buf, '"')
	for _, r := range text {
		switch {
		case r < utf8.RuneSelf && r != 0x7f, strconv.IsPrint(r):
			buf = appendInside(buf, string(r))
		case r <= 0xffff:
			buf = appendHex(buf, r)
		default:
			buf = append(buf, string(utf8.RuneError)...)
		}
	}
	return append(buf, '"')
}

// cut returns at most the first 40 runes of text, the last of them an ellipsis
// when some are missing.
func cut(text string) string {
	keep, n := 0, 0
	for i := range text {
		if n == shown-1 {
			keep = i
		}
		if n == shown {
			return text[:keep] + "…"
		}
		n++
	}
	return text
}

func isDigit(c byte) bool { return '0' <= c && c <= '9' }

func isLetter(c byte) bool { return 'a' <= c|0x20 && c|0x20 <= 'z' }
