package order_test

import (
	"cmp"
	"fmt"
	"maps"
	"slices"

	"example.org/barrow/mix/order"
)

// This file is a second way to the same order: every count is tried, and every
// pack is tried in every vehicle. It shares nothing with the package but the
// types.

// choice is an order as the oracle sees it.
type choice struct {
	figure, cost, left, packs int64
	counts                    []int64
	trips, loads              int64
}

func (c *choice) compare(d *choice) int {
	return cmp.Or(cmp.Compare(c.figure, d.figure), cmp.Compare(c.cost, d.cost), cmp.Compare(c.left, d.left),
		cmp.Compare(c.packs, d.packs), slices.Compare(c.counts, d.counts),
		cmp.Compare(c.trips, d.trips), cmp.Compare(c.loads, d.loads))
}

// brute tries every count up to one more than could be useful, and returns
// every choice that covers the needs.
type brute struct {
	r      *order.Request
	counts []int64
	skip   func(*choice) bool // before it is brought home
	seen   func(choice)
	ways   map[string][3]int64
}

// highest is one more than the largest count of o worth trying.
func (b *brute) highest(o *order.Offer) int64 {
	need := int64(b.r.Needs[o.Material] - b.r.Slack)
	if need <= 0 {
		return 1
	}
	n := max((need+int64(o.Yield)-1)/int64(o.Yield), o.Least)
	for _, br := range o.Breaks {
		n = max(n, br.From)
	}
	n++
	if o.Limited {
		n = min(n, o.Stock)
	}
	return n
}

func (b *brute) from(i int) {
	if i == len(b.counts) {
		b.leaf()
		return
	}
	o := &b.r.Offers[i]
	for n := int64(0); n <= b.highest(o); n++ {
		if n > 0 && n < o.Least {
			continue
		}
		b.counts[i] = n
		b.from(i + 1)
	}
	b.counts[i] = 0
}

func (b *brute) leaf() {
	c := choice{counts: slices.Clone(b.counts)}
	have := make([]int64, len(b.r.Needs))
	for i, n := range b.counts {
		o := &b.r.Offers[i]
		have[o.Material] += n * int64(o.Yield)
		if !o.Machine {
			c.packs += n
		}
		goods, tax := price(o, n, b.r.Tax.Num(), b.r.Tax.Den())
		c.cost += goods + tax
	}
	for i, need := range b.r.Needs {
		if have[i]+int64(b.r.Slack) < int64(need) {
			return
		}
		c.left += max(0, have[i]-int64(need))
	}
	switch b.r.Aim {
	case order.LeastLeft:
		c.figure = c.left
	case order.LeastLifting:
		c.figure = c.packs
	}
	if b.skip != nil && b.skip(&c) {
		return
	}
	way, ok := b.home(b.counts)
	if !ok {
		return
	}
	c.cost, c.trips, c.loads = c.cost+way[0], way[1], way[2]
	b.seen(c)
}

// price is the line's price and tax, the tax in hundredths of the fraction's
// own terms and rounded half up.
func price(o *order.Offer, n, num, den int64) (goods, tax int64) {
	each := int64(o.Price)
	for _, br := range o.Breaks {
		if n >= br.From {
			each = int64(br.Price)
		}
	}
	goods = each * n
	tax = goods * num / den
	if rest := goods * num % den; 2*rest >= den {
		tax++
	}
	return goods, tax
}

// home is the cheapest way to bring counts home: cost, trips, loads. Some
// vehicle takes the first pack there is; every fill of it is tried.
func (b *brute) home(counts []int64) (best [3]int64, ok bool) {
	first := slices.IndexFunc(counts, func(n int64) bool { return n > 0 })
	if first < 0 {
		return best, true
	}
	key := string(fmt.Append(nil, counts))
	if w, seen := b.ways[key]; seen {
		return w, w[0] >= 0
	}
	best[0] = -1
	for _, drop := range []bool{false, true} {
		if drop && b.r.Delivery == nil {
			continue
		}
		b.fill(counts, slices.Clone(counts), first, first, drop, [2]int64{}, func(rest []int64) {
			w, fits := b.home(rest)
			if !fits {
				return
			}
			if drop {
				w[0], w[2] = w[0]+int64(b.r.Delivery.Fee), w[2]+1
			} else {
				w[0], w[1] = w[0]+int64(b.r.TripCost), w[1]+1
			}
			if best[0] < 0 || slices.Compare(w[:], best[:]) < 0 {
				best = w
			}
		})
	}
	b.ways[key] = best
	return best, best[0] >= 0
}

// fill tries every fill of one vehicle with kinds i and on, at least one of
// first among them.
func (b *brute) fill(counts, rest []int64, first, i int, drop bool, full [2]int64, use func([]int64)) {
	if i == len(counts) {
		if rest[first] < counts[first] {
			use(rest)
		}
		return
	}
	o := &b.r.Offers[i]
	for n := int64(0); n <= counts[i]; n++ {
		now := [2]int64{full[0] + n*int64(o.Mass), full[1] + n*int64(o.Room)}
		if n > 0 && !b.takes(o, drop, now) {
			break
		}
		rest[i] = counts[i] - n
		b.fill(counts, rest, first, i+1, drop, now, use)
	}
	rest[i] = counts[i]
}

func (b *brute) takes(o *order.Offer, drop bool, full [2]int64) bool {
	payload, room := int64(b.r.Payload), int64(b.r.Room)
	if drop {
		if !o.CanDeliver {
			return false
		}
		payload, room = int64(b.r.Delivery.Payload), int64(b.r.Delivery.Capacity)
	}
	return (payload == 0 || full[0] <= payload) && (room == 0 || full[1] <= room)
}

// bruteBest is the first choice by the aim.
func bruteBest(r *order.Request) (best choice, ok bool) {
	b := newBrute(r)
	b.skip = func(c *choice) bool { return ok && c.compare(&best) > 0 }
	b.seen = func(c choice) {
		if !ok || c.compare(&best) < 0 {
			best, ok = c, true
		}
	}
	b.from(0)
	return best, ok
}

func newBrute(r *order.Request) *brute {
	return &brute{r: r, counts: make([]int64, len(r.Offers)), ways: map[string][3]int64{}}
}

// bruteFront lists cost and left over for the choices that no other beats.
func bruteFront(r *order.Request) (front [][2]int64) {
	cheapest := map[int64]int64{}
	b := newBrute(r)
	b.skip = func(c *choice) bool { cost, seen := cheapest[c.left]; return seen && cost <= c.cost }
	b.seen = func(c choice) {
		if cost, seen := cheapest[c.left]; !seen || c.cost < cost {
			cheapest[c.left] = c.cost
		}
	}
	b.from(0)
	low := int64(-1)
	for _, left := range slices.Sorted(maps.Keys(cheapest)) {
		if cost := cheapest[left]; low < 0 || cost < low {
			low = cost
			front = append(front, [2]int64{cost, left})
		}
	}
	slices.Reverse(front)
	return front
}
