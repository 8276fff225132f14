package order_test

import (
	"bytes"
	"testing"

	"example.org/barrow/mix/order"
	"example.org/barrow/units"
)

// seeds are requests as bytes; FuzzSearch needs some.
var seeds = [][]byte{
	[]byte("a bag and a half"),
	[]byte("\x00\x01\x02\x03\x04\x05\x06\x07\x08\x09\x0a\x0b\x0c\x0d" +
		"\x0e\x0f\x10\x11\x12\x13\x14\x15\x16\x17\x18\x19\x1a"),
	bytes.Repeat([]byte{0xff}, 38),
	// Free loads by the hundred million.
	[]byte("102 0\x00000020100\x00020002020\x89>iT\xfd9U\xf4\xa6s\n=\xb2`10200110"),
	[]byte("\xf402 0\x0000002010\x7f\xff020002020\x89>iT\xfd9U1\xa6s\n=\xb2`10200\x1110"), // trips by the million
	[]byte("two materials, three offers each, a truck, a tax and a yard that delivers: enough bytes for all of these"),
}

// source reads figures from bytes, zeros after the end.
type source []byte

func (s *source) byte() (b byte) {
	if len(*s) > 0 {
		b, *s = (*s)[0], (*s)[1:]
	}
	return b
}

// number is small, middling, huge or wrong.
func (s *source) number() int64 {
	b := s.byte()
	n := int64(s.byte())
	switch b % 16 {
	case 0:
		return -n
	case 1:
		return n << 55
	case 2, 3:
		return n << (b / 16 * 3)
	case 4, 5, 6:
		return n * 1_000_003
	}
	return n
}

func (s *source) request() order.Request {
	r := order.Request{Payload: units.Mass(s.number()), Room: units.Volume(s.number()),
		TripCost: units.Money(s.number()), Slack: units.Volume(s.byte() % 4),
		Aim: order.Aim(s.byte() % 3), Budget: 20_000}
	r.Tax, _ = units.NewRatio(int64(s.byte()%40), 100)
	if s.byte()%3 == 0 {
		r.Delivery = &order.Delivery{Capacity: units.Volume(s.number()),
			Payload: units.Mass(s.number()), Fee: units.Money(s.number())}
	}
	for range 1 + s.byte()%3 {
		r.Needs = append(r.Needs, units.Volume(s.number()))
	}
	for range 1 + s.byte()%8 {
		r.Offers = append(r.Offers, s.offer(len(r.Needs)))
	}
	return r
}

func (s *source) offer(materials int) order.Offer {
	o := order.Offer{Material: int(s.byte()) % materials, Yield: units.Volume(s.number()),
		Room: units.Volume(s.number()), Mass: units.Mass(s.number()),
		Price: units.Money(s.number()), Deposit: units.Money(s.byte())}
	flags := s.byte()
	if o.CanDeliver, o.Machine, o.Limited = flags&1 > 0, flags&2 > 0, flags&4 > 0; o.Limited {
		o.Stock = s.number()
	}
	if flags&8 > 0 {
		o.Least = s.number()
	}
	if flags&16 > 0 {
		o.Breaks = append(o.Breaks, order.Break{From: s.number(), Price: units.Money(s.number())})
	}
	return o
}

// FuzzSearch checks that no request makes Search panic or return an order that
// breaks a rule.
func FuzzSearch(f *testing.F) {
	if len(seeds) == 0 {
		f.Fatal("no seeds")
	}
	for _, s := range seeds {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, b []byte) {
		s := source(b)
		r := s.request()
		o, err := order.Search(r)
		if err != nil {
			if codeOf(err) == "" {
				t.Fatalf("Search(%+v): %v is no *Error", r, err)
			}
			return
		}
		checkOrder(t, &r, &o)
	})
}
