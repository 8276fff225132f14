package doc

import (
	"strings"

	"example.org/barrow/units/message"
	"example.org/barrow/units/spell"
)

// DidYouMean offers what somebody may have meant.
func DidYouMean(word string) message.Text { return message.Of(`did you mean "{0}"?`, word) }

// And lists words: a, b and c.
func And(words []string) message.Text { return listed(words, "{0} and {1}") }

// Or lists words: a, b or c.
func Or(words []string) message.Text { return listed(words, "{0} or {1}") }

// listed joins words, the last by form.
func listed(words []string, form message.Text) message.Text {
	if len(words) < 2 {
		return message.Of("{0}", strings.Join(words, ""))
	}
	last := len(words) - 1
	return message.Of(form, strings.Join(words[:last], ", "), words[last])
}

// OneLine puts single spaces for the white space that keys make, so that what
// a quantity was typed as can be shown.
func OneLine(s string) string {
	var b []byte
	gap := false
	for _, c := range []byte(s) {
		if c == ' ' || c == '\t' || c == '\n' || c == '\r' {
			gap = len(b) > 0
			continue
		}
		if gap {
			b, gap = append(b, ' '), false
		}
		b = append(b, c)
	}
	return string(b)
}

// Unknown is the problem of a word at the current path that names nothing, with
// the names it may have been meant for, or else a hint of what would do.
func (r *Reader) Unknown(code, word string, names []string, otherwise message.Text) *Problem {
	if r.full { // the report is complete: do not search for its sake
		return &Problem{}
	}
	hint := otherwise
	if meant := meant(word, names); len(meant) > 0 {
		form := message.Text(`did you mean "{0}" or "{1}" or "{2}"?`)
		switch len(meant) {
		case 1:
			form = `did you mean "{0}"?`
		case 2:
			form = `did you mean "{0}" or "{1}"?`
		}
		hint = message.Of(form, meant...)
	}
	return r.Here(code, word, hint)
}

// meant finds what somebody called by another name: the nearest spelling, with
// dashes for spaces; else the names that word is a part of, or that are a part
// of it, at most three.
func meant(word string, names []string) (found []string) {
	dashed := strings.Map(func(r rune) rune {
		if r == ' ' {
			return '-'
		}
		return r
	}, spell.Lower(OneLine(word)))
	if one := spell.Word(dashed, names); one != "" {
		return []string{one}
	}
	for _, name := range names {
		small := spell.Lower(name)
		if len(dashed) > 2 && len(small) > 2 && (strings.Contains(small, dashed) || strings.Contains(dashed, small)) && len(found) < 3 {
			found = append(found, name)
		}
	}
	return found
}
