package doc

import (
	"strings"

	"example.org/barrow/units/message"
	"example.org/barrow/units/spell"
)

// DidYouMean is the hint that suggests one word.
func DidYouMean(word string) message.Text { return message.Of(`did you mean "{0}"?`, word) }

// And joins words: a, b and c. It is empty for none.
func And(words []string) message.Text { return listed(words, "{0} and {1}") }

// Or joins words: a, b or c. It is empty for none.
func Or(words []string) message.Text { return listed(words, "{0} or {1}") }

// listed joins words with commas, and the last by form, which a language translates.
func listed(words []string, form message.Text) message.Text {
	if len(words) < 2 {
		return message.Of("{0}", strings.Join(words, ""))
	}
	last := len(words) - 1
	return message.Of(form, strings.Join(words[:last], ", "), words[last])
}

// OneLine returns s without the space around it and with a single space for every
// run of spaces, tabs and line breaks, so that it can be shown as it was typed.
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

// Unknown returns a problem at the current path, for [Reader.Add]: a word that is none
// of names. The hint suggests up to three names that may have been meant; without
// any it is otherwise.
func (r *Reader) Unknown(code, word string, names []string, otherwise message.Text) *Problem {
	if r.full { // the problem would not be listed, and the search takes time
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

// meant finds the names that may have been meant by word: the nearest spelling, with
// dashes for spaces, since ids have dashes; or else the names that contain word or
// are contained in it, at most three. Words of one or two letters are in too many
// names to be a clue.
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
		long := len(dashed) > 2 && len(small) > 2
		if long && len(found) < 3 && (strings.Contains(small, dashed) || strings.Contains(dashed, small)) {
			found = append(found, name)
		}
	}
	return found
}
