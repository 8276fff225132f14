package sure_test

import (
	"encoding/binary"
	"math"
	"testing"

	"example.org/barrow/mix/sure"
)

// fuzzed reads a model from bytes, with bad figures as well; missing bytes are
// 0. Small sizes keep a run short.
func fuzzed(data []byte) *sure.Model {
	next := func() byte {
		if len(data) == 0 {
			return 0
		}
		b := data[0]
		data = data[1:]
		return b
	}
	figure := func() float64 {
		switch b := next(); {
		case b < 200: // mostly plain ones
			return float64(b) / 128
		case len(data) < 8:
			return float64(b)
		default:
			x := math.Float64frombits(binary.LittleEndian.Uint64(data))
			data = data[8:]
			return x
		}
	}
	terms := func(n int) (out []sure.Term) {
		for range n {
			t := sure.Term{Item: int(int8(next())) % 8, Amount: 100 * figure()}
			for range next() % 4 {
				u := next()
				t.Uses = append(t.Uses, sure.Use{Factor: int(u%16) - 1, Kind: sure.Kind(u >> 4 % 3)})
			}
			out = append(out, t)
		}
		return out
	}
	m := &sure.Model{Items: int(next()%8) - 1}
	for range next() % 12 {
		f := sure.Factor{Low: figure(), Mode: figure(), High: figure()}
		b := next()
		f.Flat, f.Pieces = b%2 == 1, pieces[int(b>>1)%len(pieces)]
		m.Factors = append(m.Factors, f)
	}
	m.Needs = terms(int(next() % 12))
	m.Supplies = terms(int(next() % 12))
	return m
}

// pieces are the numbers of pieces that a fuzzed factor may have.
var pieces = []int64{0, 0, 1, 2, 3, 16, 17, 1_000_000, sure.MaxPieces, -1}

// seeds are models worth starting from; the last is refused.
var seeds = [][]byte{
	{2, 1, 10, 20, 60, 0, 1, 0, 100, 1, 0x11, 1, 0, 110, 0},
	{2, 2, 10, 20, 60, 1, 64, 128, 190, 0, 2, 0, 100, 2, 0x11, 0x02, 0, 50, 1, 0x01, 1, 0, 110, 1, 0x02},
	{3, 3, 0, 0, 127, 1, 0, 64, 127, 0, 5, 5, 5, 0, 3, 0, 90, 2, 0x01, 0x01, 1, 80, 2, 0x02, 0x12, 0, 9, 0, 2, 0, 120, 1, 0x11, 1, 100, 0},
	{2, 2, 10, 20, 60, 4, 64, 128, 190, 11, 2, 0, 100, 2, 0x11, 0x02, 0, 50, 1, 0x01, 1, 0, 110, 1, 0x02},
	{2, 3, 100, 0, 130, 6, 64, 0, 190, 14, 90, 0, 110, 13, 1, 0, 100, 2, 0x02, 0x03, 1, 0, 110, 2, 0x01, 0x03},
	{2, 1, 255, 0, 0, 0, 0, 0, 0, 0xf8, 0x7f, 9, 9, 0, 1, 0, 1, 1, 1, 0},
}

// FuzzModel checks that a model is either refused or answered without a panic,
// and that its answers agree with each other.
func FuzzModel(f *testing.F) {
	good := 0
	for _, s := range seeds {
		f.Add(s)
		if fuzzed(s).Check() == nil {
			good++
		}
	}
	if good != len(seeds)-1 {
		f.Fatalf("%d of the seeds are good, want all but one", good)
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		m := fuzzed(data)
		if m.Check() != nil {
			return
		}
		for _, f := range m.Factors {
			last := f.Low
			for _, p := range []float64{0, 1e-9, 0.25, 0.5, 0.75, 1 - 1e-9, 1} {
				x := f.At(p)
				if !within(x, last, f.High) || !within(f.Below(x), 0, 1) {
					t.Fatalf("%+v: At(%v) = %v after %v, Below of it %v", f, p, x, last, f.Below(x))
				}
				last = x
			}
		}
		c := m.Chance()
		if !within(c.All, 0, 1) || !within(c.Error, 0, 0.5) || len(c.Item) != m.Items {
			t.Fatalf("Chance() = %+v", c)
		}
		for _, p := range c.Item {
			if !within(p, c.All-1e-9, 1) {
				t.Fatalf("Chance() = %+v", c)
			}
		}
		least, plan, most := m.Enough(0), m.Enough(0.9), m.Enough(1)
		for i, v := range plan {
			if !within(v, least[i]*(1-1e-12), most[i]*(1+1e-12)) {
				t.Fatalf("Enough(0.9) = %v, not within %v and %v", plan, least, most)
			}
			if q := m.Quantile(i, 0.9); !within(q, least[i]*(1-1e-12), most[i]*(1+1e-12)) {
				t.Fatalf("Quantile(%d, 0.9) = %v, not within %v and %v", i, q, least[i], most[i])
			}
		}
		back := &sure.Model{Items: m.Items, Factors: m.Factors, Needs: m.Needs, Supplies: exactly(plan...)}
		if got := back.Chance(); got.All < 0.9-4*got.Error-1e-9 {
			t.Fatalf("Enough(0.9) = %v has the chance %+v", plan, got)
		}
		for _, in := range m.Matters(len(m.Factors)) {
			if !(in.Moves > 0) || math.IsInf(in.Moves, 0) {
				t.Fatalf("Matters: %+v", in)
			}
		}
	})
}

// within is false for NaN.
func within(x, low, high float64) bool { return low <= x && x <= high }
