package doc

import (
	"strings"

	"example.org/barrow/mix/json"
	"example.org/barrow/units"
	"example.org/barrow/units/message"
)

// Type is what is written in a field: how it is read, and what a help text, a
// form and a schema know of it. It is plain data, and is not to be changed.
type Type struct {
	// Takes is what to write there, in words: "length"; see [Type.InWords].
	Takes string
	// Form is how a form asks for it: "length", "count", "choice"; an object or a
	// list has a form of its own, and "fixed" is never asked for.
	Form string
	// Such is what to write, in a hint: "a length such as "3 in""; of a list, its
	// elements.
	Such  message.Text
	Least int64        // of a count; of lengths in one text, how many
	Limit *units.Ratio // of a share
	Words []string     // of a choice, or of each element of a list
	// Of is the object, or each element of a list of objects. It is a function,
	// since an object may hold its like.
	Of    func() *Object
	Items *Type // each element of a list that has no objects
	// Between are the words between the fields of an object where it is written
	// in one line: "64 at 3 in". An object without them is never so written.
	Between []string

	// Read reads n into what at points to: for a type of this package, what its
	// comment says.
	Read func(t *Type, r *Reader, n *json.Node, at any)
}

// InWords is what to write there, in words: "clay, loam or sandy" of a choice.
func (t *Type) InWords() string {
	if t.Takes == "" {
		return Or(t.Words).String()
	}
	return t.Takes
}

// The types of quantities. Length, Area, Volume, Mass and Density are more than
// zero; Margin is a length that may be zero. Each reads into the type of package
// units that it is called by, Margin into a [units.Length].
var (
	Length  = Type{Takes: "length", Form: "length", Such: `a length such as "3 in"`, Read: quantity(true, units.ParseLength)}
	Margin  = Type{Takes: "length", Form: "length", Such: `a length such as "1 in"`, Read: quantity(false, units.ParseLength)}
	Area    = Type{Takes: "area", Form: "area", Such: `an area such as "240 sq ft"`, Read: quantity(true, units.ParseArea)}
	Volume  = Type{Takes: "volume", Form: "volume", Such: `a volume such as "1 1/2 cu ft"`, Read: quantity(true, units.ParseVolume)}
	Mass    = Type{Takes: "weight", Form: "mass", Such: `a weight such as "40 lb"`, Read: quantity(true, units.ParseMass)}
	Density = Type{Takes: "weight per volume", Form: "density", Such: `a weight per volume such as "1100 lb/cu yd"`, Read: quantity(true, units.ParseDensity)}
)

func quantity[T ~int64](positive bool, parse func(string) (T, error)) func(*Type, *Reader, *json.Node, any) {
	return func(t *Type, r *Reader, n *json.Node, at any) { *at.(*T) = Quantify(r, n, t.Such, positive, parse) }
}

// Quantify reads text with parse. A quantity that must be more than zero says so
// with positive; such is what to write, in words with an example.
func Quantify[T ~int64](r *Reader, n *json.Node, such message.Text, positive bool, parse func(string) (T, error)) T {
	s, ok := r.Text(n, such)
	if !ok {
		return 0
	}
	v, err := parse(s)
	switch {
	case err != nil:
		r.Quantity(err)
	case positive && v == 0:
		r.Problem(units.QuantityZero, message.Of("write {=0} of more than zero", string(such)))
	}
	return v
}

// Lengths reads a list of lengths into a []units.Length.
var Lengths = Type{Takes: "list of lengths", Form: "list", Items: &Length, Read: func(_ *Type, r *Reader, n *json.Node, at any) {
	*at.(*[]units.Length) = List(r, n, "lengths", func(r *Reader, n *json.Node, l *units.Length) { Length.Read(&Length, r, n, l) })
}}

// TwoLengths and ThreeLengths read just so many lengths in one text, "4 ft x 3 ft",
// into a []units.Length.
var (
	TwoLengths   = Type{Takes: "lengths", Form: "lengths", Least: 2, Read: readDims}
	ThreeLengths = Type{Takes: "lengths", Form: "lengths", Least: 3, Read: readDims}
)

func readDims(t *Type, r *Reader, n *json.Node, at any) {
	*at.(*[]units.Length) = r.dims(n, int(t.Least))
}

func (r *Reader) dims(n *json.Node, want int) []units.Length {
	such := message.Text(`lengths such as "4 ft x 3 ft"`)
	if want == 3 {
		such = `lengths such as "20 in x 10 in x 2 in"`
	}
	s, ok := r.Text(n, such)
	if !ok {
		return nil
	}
	d, err := units.ParseDims(s)
	switch {
	case err != nil:
		r.Quantity(err)
	case len(d) != want && want == 3:
		r.Problem(units.DimsCount, "three lengths, such as 20 in x 10 in x 2 in")
	case len(d) != want:
		r.Problem(units.DimsCount, "two lengths, such as 4 ft x 3 ft")
	default:
		return d
	}
	return nil
}

// Money reads an amount, as text or as a bare number, into a [units.Money]. Price
// may be left out: it reads into a *units.Money.
var (
	Money = Type{Takes: "amount", Form: "money", Read: func(_ *Type, r *Reader, n *json.Node, at any) { *at.(*units.Money) = r.money(n) }}
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

// Limits of shares. A loss of everything needs without end, so Most bounds it.
var (
	whole   = units.Percent(100)
	Most    = units.Percent(95)
	tenfold = units.Percent(1000)
)

// Shares, read into a [units.Ratio]: of all; of at most [Most]; on top, up to ten
// times the whole; and of more than zero, of all or of at most Most.
var (
	Share     = Type{Takes: "share", Form: "share", Limit: &whole, Read: readShare}
	MostShare = Type{Takes: "share", Form: "share", Limit: &Most, Read: readShare}
	Extra     = Type{Takes: "share", Form: "share", Limit: &tenfold, Read: readShare}
	SomeOfAll = Type{Takes: "share", Form: "share", Limit: &whole, Read: readSome}
	SomeShare = Type{Takes: "share", Form: "share", Limit: &Most, Read: readSome}
)

// Loss reads a share that is lost, at most [Most], into a *units.Ratio: nil is
// not said.
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

// Factor reads a plain number from 1 to 10, as text or bare, into a
// [units.Ratio].
var Factor = Type{Takes: "number", Form: "number", Read: func(_ *Type, r *Reader, n *json.Node, at any) {
	num, den := r.Number(n)
	if f, err := units.NewRatio(num, den); err == nil && num >= den && num <= 10*den {
		*at.(*units.Ratio) = f
		return
	}
	r.Problem(units.NumberRange, "write a number from 1 to 10, such as 1.5")
}}

// Number reads a plain number, as text or bare, as a fraction.
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

// MaxCount bounds a count of anything: a thousand million.
const MaxCount = 1_000_000_000

// Count is a whole number from one on, or from the Least of a type of its own, into
// an int64. MaybeCount, from zero on, may be left out, and reads into an *int64.
var (
	Count      = Type{Takes: "whole number", Form: "count", Least: 1, Read: ReadCount}
	MaybeCount = Type{Takes: "whole number", Form: "count", Read: func(t *Type, r *Reader, n *json.Node, at any) {
		count := r.Count(n, t.Least)
		*at.(**int64) = &count
	}}
)

// ReadCount is how a [Count] is read.
func ReadCount(t *Type, r *Reader, n *json.Node, at any) { *at.(*int64) = r.Count(n, t.Least) }

// Count reads a whole number from least to [MaxCount].
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

// wholeNumber reads a number's literal, if it has nothing but digits and a sign;
// one past [MaxCount] is just that.
func wholeNumber(literal string) (v int64, ok bool) {
	digits, negative := strings.CutPrefix(literal, "-")
	for _, c := range []byte(digits) {
		if c < '0' || c > '9' {
			return 0, false
		}
		v = min(10*v+int64(c-'0'), MaxCount+1)
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
