package doc

import (
	"strings"

	"example.org/barrow/mix/json"
	"example.org/barrow/units"
	"example.org/barrow/units/message"
)

// Type says what may be written in a field: how it is read, and what a help text, a
// form and a schema show for it. It is plain data and read-only.
type Type struct {
	// Takes is what to write, in a word or two, for a help text: "length". A choice
	// leaves it empty; see [Type.InWords].
	Takes string
	// Form is the kind of control that a form shows: "length", "count", "choice",
	// "object", "list". A form does not show a field whose Form is "fixed".
	Form string
	// Such is what to write, for a hint: "a length such as "3 in"". For a list it is
	// the elements: "lengths".
	Such  message.Text
	Least int64        // the least of a count; for lengths in one text, how many
	Limit *units.Ratio // the most of a share
	Words []string     // the words of a choice, or of each element of a list
	// Of returns the object that is written there, or each object of a list. It is a
	// function because an object may contain its own kind, as an area may, and Go
	// does not allow such a circle among variables.
	Of    func() *Object
	Items *Type // the type of each element of a list of values
	// Between are the words between the fields of an object that is written in one
	// line: "64 at 3 in". An object without them has no such line.
	Between []string

	// Read reads n into the value that at points to and reports what is wrong. The
	// comment of each type says which Go type that value has. Read gets the type
	// itself, so that one function can serve types with different limits.
	Read func(t *Type, r *Reader, n *json.Node, at any)
}

// InWords is what to write, for a help text: Takes, or the words of a choice,
// "clay, loam or sandy".
func (t *Type) InWords() string {
	if t.Takes == "" {
		return Or(t.Words).String()
	}
	return t.Takes
}

// The types of quantities. Each reads into the type of package units with the same
// name, Margin into a [units.Length], rounded once to that type's unit. Zero is a
// problem for all but Margin: a layer or a pack of nothing is always a mistake.
var (
	Length  = Type{Takes: "length", Form: "length", Such: `a length such as "3 in"`, Read: quantity[units.Length](true, units.FixedLength)}
	Margin  = Type{Takes: "length", Form: "length", Such: `a length such as "1 in"`, Read: quantity[units.Length](false, units.FixedLength)}
	Area    = Type{Takes: "area", Form: "area", Such: `an area such as "240 sq ft"`, Read: quantity[units.Area](true, units.FixedArea)}
	Volume  = Type{Takes: "volume", Form: "volume", Such: `a volume such as "1 1/2 cu ft"`, Read: quantity[units.Volume](true, units.FixedVolume)}
	Mass    = Type{Takes: "weight", Form: "mass", Such: `a weight such as "40 lb"`, Read: quantity[units.Mass](true, roundedBy(units.ParseMass))}
	Density = Type{Takes: "weight per volume", Form: "density", Such: `a weight per volume such as "1100 lb/cu yd"`, Read: quantity[units.Density](true, roundedBy(units.ParseDensity))}
)

// quantity makes the Read of a type of quantities.
func quantity[T ~int64](positive bool, parse func(string) (units.Fixed, error)) func(*Type, *Reader, *json.Node, any) {
	return func(t *Type, r *Reader, n *json.Node, at any) {
		*at.(*T) = T(Quantify(r, n, t.Such, positive, parse))
	}
}

// roundedBy is parse for a quantity that is rounded for good: a weight decides no count.
func roundedBy[T ~int64](parse func(string) (T, error)) func(string) (units.Fixed, error) {
	return func(s string) (units.Fixed, error) {
		v, err := parse(s)
		return units.FixedOf(v), err
	}
}

// Quantify reads text with parse and returns the quantity, rounded once to a whole
// count, or zero with a problem. Where the count is not all that was typed, the object
// that is being read keeps the text; see [AsTyped]. positive makes zero a problem too.
// such is what to write, in words with an example.
func Quantify(r *Reader, n *json.Node, such message.Text, positive bool, parse func(string) (units.Fixed, error)) int64 {
	s, ok := r.Text(n, such)
	if !ok {
		return 0
	}
	f, err := parse(s)
	v := f.Round()
	switch {
	case err != nil:
		r.Quantity(err)
	case positive && v == 0:
		r.Problem(units.QuantityZero, message.Of("write {=0} of more than zero", string(such)))
	case v != 0 && !f.Whole():
		r.keep(s)
	}
	return v
}

// Lengths reads a list of lengths into a []units.Length.
var Lengths = Type{Takes: "list of lengths", Form: "list", Items: &Length, Read: readLengths}

func readLengths(_ *Type, r *Reader, n *json.Node, at any) {
	*at.(*[]units.Length) = List(r, n, "lengths", func(r *Reader, n *json.Node, l *units.Length) {
		Length.Read(&Length, r, n, l)
	})
}

// TwoLengths and ThreeLengths read exactly two or three lengths in one text,
// "4 ft x 3 ft", into a []units.Length.
var (
	TwoLengths   = Type{Takes: "lengths", Form: "lengths", Least: 2, Read: readDims}
	ThreeLengths = Type{Takes: "lengths", Form: "lengths", Least: 3, Read: readDims}
)

func readDims(t *Type, r *Reader, n *json.Node, at any) {
	*at.(*[]units.Length) = r.dims(n, int(t.Least))
}

// dims reads want lengths, two or three, in one text. It returns nil with a problem.
func (r *Reader) dims(n *json.Node, want int) []units.Length {
	such := message.Text(`lengths such as "4 ft x 3 ft"`)
	if want == 3 {
		such = `lengths such as "20 in x 10 in x 2 in"`
	}
	s, ok := r.Text(n, such)
	if !ok {
		return nil
	}
	d, err := units.FixedDims(s)
	switch {
	case err != nil:
		r.Quantity(err)
	case len(d) != want && want == 3:
		r.Problem(units.DimsCount, "three lengths, such as 20 in x 10 in x 2 in")
	case len(d) != want:
		r.Problem(units.DimsCount, "two lengths, such as 4 ft x 3 ft")
	default:
		sides, whole := RoundAll(d)
		if !whole {
			r.keep(s)
		}
		return sides
	}
	return nil
}

// RoundAll rounds lengths, and says whether they were whole counts already.
func RoundAll(dims []units.Fixed) (sides []units.Length, whole bool) {
	sides, whole = make([]units.Length, len(dims)), true
	for i, d := range dims {
		sides[i], whole = units.Length(d.Round()), whole && d.Whole()
	}
	return sides, whole
}

// The types of amounts, as text or as a bare number. Money reads into a
// [units.Money]. Price reads into a *units.Money, where nil is an unknown price and
// zero is free.
var (
	Money = Type{Takes: "amount", Form: "money", Read: func(_ *Type, r *Reader, n *json.Node, at any) {
		*at.(*units.Money) = r.money(n)
	}}
	Price = Type{Takes: "amount", Form: "money", Read: func(_ *Type, r *Reader, n *json.Node, at any) {
		m := r.money(n)
		*at.(**units.Money) = &m
	}}
)

func (r *Reader) money(n *json.Node) units.Money {
	if n.Kind != json.String && n.Kind != json.Number {
		r.Problem(JSONKind, message.Of(`write an amount such as "{#0}", not {=1}`, "4.75", n.Kind.String()))
		return 0
	}
	m, err := units.ParseMoney(n.Text)
	if err != nil {
		r.Quantity(err)
	}
	return m
}

// The limits of shares. Most is below the whole because a share that is lost divides
// by what remains, and where all is lost there is no volume that would do.
var (
	whole   = units.Percent(100)
	Most    = units.Percent(95)
	tenfold = units.Percent(1000)
)

// The types of shares, each read exactly into a [units.Ratio]. Share is at most
// [Whole] and MostShare at most [Most]. Extra is what comes on top, at most ten times
// the whole. SomeOfAll and SomeShare are Share and MostShare above zero.
var (
	Share     = Type{Takes: "share", Form: "share", Limit: &whole, Read: readShare}
	MostShare = Type{Takes: "share", Form: "share", Limit: &Most, Read: readShare}
	Extra     = Type{Takes: "share", Form: "share", Limit: &tenfold, Read: readShare}
	SomeOfAll = Type{Takes: "share", Form: "share", Limit: &whole, Read: readSome}
	SomeShare = Type{Takes: "share", Form: "share", Limit: &Most, Read: readSome}
)

// Loss reads a share that is lost, at most [Most], into a *units.Ratio. Left out, it
// stays nil and a default applies; 0% overrides the default.
var Loss = Type{Takes: "share", Form: "share", Limit: &Most, Read: func(t *Type, r *Reader, n *json.Node, at any) {
	share := r.share(n, *t.Limit)
	*at.(**units.Ratio) = &share
}}

func readShare(t *Type, r *Reader, n *json.Node, at any) { *at.(*units.Ratio) = r.share(n, *t.Limit) }

func readSome(t *Type, r *Reader, n *json.Node, at any) {
	share := r.share(n, *t.Limit)
	if share == (units.Ratio{}) {
		r.Problem(units.QuantityZero, "a share of more than zero, such as 25%")
	}
	*at.(*units.Ratio) = share
}

// share reads a share up to limit, or returns zero with a problem.
func (r *Reader) share(n *json.Node, limit units.Ratio) units.Ratio {
	s, ok := n.Text, true
	if n.Kind != json.Number { // 0.1 without quotes is as clear as "10%"
		if s, ok = r.Text(n, `a share such as "10%"`); !ok {
			return units.Ratio{}
		}
	}
	share, err := units.ParseRatio(s)
	switch {
	case err != nil:
		r.Quantity(err)
	case limit.Less(share):
		r.Problem(ShareRange, message.Of("at most {#0}", limit.String()))
		return units.Ratio{}
	}
	return share
}

// Factor reads a plain number from 1 to 10, as text or bare, exactly into a
// [units.Ratio].
var Factor = Type{Takes: "number", Form: "number", Read: func(_ *Type, r *Reader, n *json.Node, at any) {
	num, den := r.Number(n)
	if f, err := units.NewRatio(num, den); err == nil && num >= den && num <= 10*den {
		*at.(*units.Ratio) = f
		return
	}
	r.Problem(units.NumberRange, "write a number from 1 to 10, such as 1.5")
}}

// Number reads a plain number, as text or bare, and returns it as an exact fraction.
// With a problem it is 0/1, which is safe to divide by.
func (r *Reader) Number(n *json.Node) (num, den int64) {
	if n.Kind != json.String && n.Kind != json.Number {
		r.Problem(JSONKind, message.Of("write a number, not {=0}", n.Kind.String()))
		return 0, 1
	}
	num, den, err := units.ParseNumber(n.Text)
	if err != nil {
		r.Quantity(err)
	}
	return num, den
}

// Bool reads true or false into a bool.
var Bool = Type{Takes: "true or false", Form: "switch", Read: func(_ *Type, r *Reader, n *json.Node, at any) {
	if n.Kind != json.Bool {
		r.Problem(JSONKind, "write true or false, without quotes")
	}
	*at.(*bool) = n.Bool
}}

// MaxCount is the largest count of anything. Two of them multiplied still fit an
// int64.
const MaxCount = 1_000_000_000

// The types of whole numbers, up to [MaxCount]. Count is one or more and reads into
// an int64; a type of its own Least may use the same Read. MaybeCount is zero or more
// and reads into an *int64, which stays nil where the field is left out.
var (
	Count      = Type{Takes: "whole number", Form: "count", Least: 1, Read: ReadCount}
	MaybeCount = Type{Takes: "whole number", Form: "count", Read: func(t *Type, r *Reader, n *json.Node, at any) {
		count := r.Count(n, t.Least)
		*at.(**int64) = &count
	}}
)

// ReadCount is the Read of [Count]: a whole number from the type's Least on.
func ReadCount(t *Type, r *Reader, n *json.Node, at any) { *at.(*int64) = r.Count(n, t.Least) }

// Count reads a whole number from least to [MaxCount]. It returns zero with a problem
// for anything else.
func (r *Reader) Count(n *json.Node, least int64) int64 {
	if n.Kind != json.Number {
		r.Problem(JSONKind, notCount(n))
		return 0
	}
	v, whole := wholeNumber(n.Text)
	switch {
	case !whole:
		r.Problem(CountWhole, "write a whole number, such as 64")
	case v < least:
		r.Problem(CountSmall, message.Of("at least {0}", itoa(least)))
	case v > MaxCount:
		r.Problem(CountLarge, message.Of("at most {#0}", itoa(MaxCount)))
	default:
		return v
	}
	return 0
}

// wholeNumber reads the literal of a JSON number that is digits with or without a
// minus sign. -0 is none: the page could not keep it as a number. A number above [MaxCount] comes back as MaxCount+1, however long it is,
// so that nothing overflows.
func wholeNumber(literal string) (v int64, ok bool) {
	digits, negative := strings.CutPrefix(literal, "-")
	for _, c := range []byte(digits) {
		if c < '0' || c > '9' {
			return 0, false
		}
		v = min(10*v+int64(c-'0'), MaxCount+1)
	}
	if negative {
		return -v, v > 0
	}
	return v, true
}

// notCount is the hint for a value that is not a number where a count is needed.
func notCount(n *json.Node) message.Text {
	switch {
	case n.Kind != json.String:
		return message.Of("write a whole number, such as 64, not {=0}", n.Kind.String())
	case n.Text != "" && strings.Trim(n.Text, "0123456789") == "":
		return "write the number without quotes, such as 64"
	}
	return "write a whole number, such as 64"
}
