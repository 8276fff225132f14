package mix

import (
	"slices"
	"strings"

	"example.org/barrow/mix/json"
	"example.org/barrow/units"
	"example.org/barrow/units/message"
	"example.org/barrow/units/spell"
)

// field is one field of an object of the job document: how it is read and
// what it is, in one place. The tables of fields are the document's schema;
// [Fields] lists them for help texts. T is a pointer to what is read into:
// pointers share their compiled code, whatever they point to.
type field[T any] struct {
	name  string
	takes string // what to write there
	about string
	read  func(c *checker, n *json.Node, into T)
}

// readObject reads n's fields into into and reports every field that is
// unknown. what is the object in words: "a task".
func readObject[T any](c *checker, n *json.Node, into T, what message.Text, tables ...[]field[T]) {
	if n.Kind != json.Object {
		c.problem("json.kind", message.Of("{=0} is an object in { }, not {=1}", string(what), n.Kind.String()))
		return
	}
	for i, key := range n.Keys {
		c.path.push(key)
		if f := lookUp(key, tables); f != nil {
			f.read(c, &n.Items[i], into)
		} else {
			c.problem("field.unknown", unknownField(key, what, tables))
		}
		c.path.pop()
	}
}

func lookUp[T any](key string, tables [][]field[T]) *field[T] {
	for _, fields := range tables {
		for i := range fields {
			if fields[i].name == key {
				return &fields[i]
			}
		}
	}
	return nil
}

func unknownField[T any](key string, what message.Text, tables [][]field[T]) message.Text {
	var names []string
	for _, fields := range tables {
		for i := range fields {
			names = append(names, fields[i].name)
		}
	}
	if meant := spell.Word(key, names); meant != "" {
		return didYouMean(meant)
	}
	return message.Of("{=0} takes {=1}", string(what), string(and(names)))
}

// didYouMean offers what somebody may have meant.
func didYouMean(word string) message.Text { return message.Of(`did you mean "{0}"?`, word) }

// and lists words: a, b and c.
func and(words []string) message.Text { return listed(words, "{0} and {1}") }

// or lists words: a, b or c.
func or(words []string) message.Text { return listed(words, "{0} or {1}") }

// listed joins words, the last by form.
func listed(words []string, form message.Text) message.Text {
	if len(words) < 2 {
		return message.Of("{0}", strings.Join(words, ""))
	}
	last := len(words) - 1
	return message.Of(form, strings.Join(words[:last], ", "), words[last])
}

// readList reads every element of n with read.
func readList[T any](c *checker, n *json.Node, what message.Text, read func(c *checker, n *json.Node, into *T)) []T {
	if !isList(c, n, what) {
		return nil
	}
	list := make([]T, len(n.Items))
	for i := range n.Items {
		c.path.pushIndex(i)
		read(c, &n.Items[i], &list[i])
		c.path.pop()
	}
	return list
}

func isList(c *checker, n *json.Node, what message.Text) bool {
	if n.Kind != json.Array {
		c.problem("json.kind", message.Of("{=0} are a list in [ ], not {=1}", string(what), n.Kind.String()))
		return false
	}
	return true
}

// readText returns n's text as a person typed it, without the space around it.
func readText(c *checker, n *json.Node, takes message.Text) (string, bool) {
	text := oneLine(n.Text)
	switch {
	case n.Kind == json.String && text == "":
		c.problem("quantity.empty", message.Of("write {=0}", string(takes)))
	case n.Kind == json.String:
		return text, true
	case n.Kind == json.Number:
		c.problem("json.kind", message.Of("write {=0} as text in quotes, with its unit", string(takes)))
	default:
		c.problem("json.kind", message.Of("write {=0}, not {=1}", string(takes), n.Kind.String()))
	}
	return "", false
}

// readWord reads text that names something, and has no unit.
func readWord(c *checker, n *json.Node, takes message.Text) string {
	if n.Kind != json.String {
		c.problem("json.kind", message.Of("write {=0} in quotes, not {=1}", string(takes), n.Kind.String()))
		return ""
	}
	return oneLine(n.Text)
}

// oneLine puts single spaces for the white space that keys make, so that what
// a quantity was typed as can be shown.
func oneLine(s string) string {
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

// readQuantity reads text with parse. A quantity that must be more than zero
// says so with positive.
func readQuantity[T ~int64](c *checker, n *json.Node, takes message.Text, positive bool, parse func(string) (T, error)) T {
	s, ok := readText(c, n, takes)
	if !ok {
		return 0
	}
	v, err := parse(s)
	switch {
	case err != nil:
		c.unitsError(err)
	case positive && v == 0:
		c.problem("quantity.zero", message.Of("write {=0} of more than zero", string(takes)))
	}
	return v
}

func readLength(c *checker, n *json.Node) units.Length {
	return readQuantity(c, n, `a length such as "3 in"`, true, units.ParseLength)
}

// readMargin reads a length that may be zero.
func readMargin(c *checker, n *json.Node) units.Length {
	return readQuantity(c, n, `a length such as "1 in"`, false, units.ParseLength)
}

func readVolume(c *checker, n *json.Node) units.Volume {
	return readQuantity(c, n, `a volume such as "1 1/2 cu ft"`, true, units.ParseVolume)
}

func readMass(c *checker, n *json.Node) units.Mass {
	return readQuantity(c, n, `a weight such as "40 lb"`, true, units.ParseMass)
}

func readDensity(c *checker, n *json.Node) units.Density {
	return readQuantity(c, n, `a weight per volume such as "1100 lb/cu yd"`, true, units.ParseDensity)
}

// readMoney takes an amount as text or as a bare number.
func readMoney(c *checker, n *json.Node) units.Money {
	if n.Kind != json.String && n.Kind != json.Number {
		c.problem("json.kind", message.Of(`write an amount such as "{#0}", not {=1}`, "4.75", n.Kind.String()))
		return 0
	}
	m, err := units.ParseMoney(n.Text)
	if err != nil {
		c.unitsError(err)
	}
	return m
}

// readShare reads a share of at most limit.
func readShare(c *checker, n *json.Node, limit units.Ratio) units.Ratio {
	s, ok := n.Text, true
	if n.Kind != json.Number { // 0.1 without quotes is as clear as "10%"
		if s, ok = readText(c, n, `a share such as "10%"`); !ok {
			return units.Ratio{}
		}
	}
	r, err := units.ParseRatio(s)
	switch {
	case err != nil:
		c.unitsError(err)
	case limit.Less(r):
		c.problem("share.range", message.Of("at most {#0}", limit.String()))
		return units.Ratio{}
	}
	return r
}

// maxCount bounds a count of anything: a thousand million.
const maxCount = 1_000_000_000

// readCount reads a whole number from least to [maxCount].
func readCount(c *checker, n *json.Node, least int64) int64 {
	if n.Kind != json.Number {
		c.problem("json.kind", notCount(n))
		return 0
	}
	v, whole := wholeNumber(n.Text)
	switch {
	case !whole:
		c.problem("count.whole", "write a whole number, such as 64")
	case v < least:
		c.problem("count.small", message.Of("at least {0}", itoa(least)))
	case v > maxCount:
		c.problem("count.large", message.Of("at most {#0}", itoa(maxCount)))
	default:
		return v
	}
	return 0
}

// wholeNumber reads a number's literal, if it has nothing but digits and a sign;
// one past [maxCount] is just that.
func wholeNumber(literal string) (v int64, ok bool) {
	digits, negative := strings.CutPrefix(literal, "-")
	for _, c := range []byte(digits) {
		if c < '0' || c > '9' {
			return 0, false
		}
		v = min(10*v+int64(c-'0'), maxCount+1)
	}
	if negative {
		v = -v
	}
	return v, true
}

// notCount is the hint for what is written in place of a count.
func notCount(n *json.Node) message.Text {
	switch {
	case n.Kind != json.String:
		return message.Of("write a whole number, such as 64, not {=0}", n.Kind.String())
	case n.Text != "" && strings.Trim(n.Text, "0123456789") == "":
		return "write the number without quotes, such as 64"
	}
	return "write a whole number, such as 64"
}

// maxName bounds a name, so that no table bursts.
const maxName = 120

// readName reads a name that people read: any text without control characters.
func readName(c *checker, n *json.Node) string {
	if n.Kind != json.String {
		c.problem("json.kind", message.Of("write a name in quotes, not {=0}", n.Kind.String()))
		return ""
	}
	name := strings.TrimSpace(n.Text)
	switch {
	case len([]rune(name)) > maxName:
		c.problem("name.long", message.Of("at most {0} letters", itoa(maxName)))
		return ""
	case strings.ContainsFunc(name, isControl):
		c.problem("name.control", "a name is one line, without control characters")
		return ""
	}
	return name
}

// isControl reports the characters that would move a terminal's cursor or
// turn the text around: C0, C1, line separators and bidirectional overrides.
func isControl(r rune) bool {
	return r < ' ' || 0x7f <= r && r < 0xa0 || r == 0x2028 || r == 0x2029 || 0x202a <= r && r <= 0x202e || 0x2066 <= r && r <= 0x2069
}

// readID reads a name that other fields point at.
func readID(c *checker, n *json.Node) string {
	id := readName(c, n)
	switch {
	case !c.sound():
	case !plainID(id):
		c.problem("id.form", `an id is letters, digits, "-", "#" or ".", such as "bark-fines"`)
	case strings.Trim(id, "0123456789") == "":
		// It would stand beside a figure as another, and readers of JSON put
		// such keys before the others, so that parts come in another order.
		c.problem("id.form", message.Of(`an id needs more than digits, such as "no-{0}"`, id))
	}
	return id
}

func plainID(id string) bool {
	if id == "" || len(id) > 64 {
		return false
	}
	for _, r := range id {
		if !('a' <= r && r <= 'z' || 'A' <= r && r <= 'Z' || '0' <= r && r <= '9' || strings.ContainsRune("-_#.", r)) {
			return false
		}
	}
	return true
}

// oneOf reads one of words.
func oneOf(c *checker, n *json.Node, words ...string) string {
	s, ok := readText(c, n, message.Of("one of {=0}", string(or(words))))
	if !ok || slices.Contains(words, s) {
		return s
	}
	if meant := spell.Word(s, words); meant != "" {
		c.problem("word.unknown", didYouMean(meant))
	} else {
		c.problem("word.unknown", message.Of("write {=0}", string(or(words))))
	}
	return ""
}

// whole is all of something.
var whole = units.Percent(100)
