package picture

import (
	"math"

	"example.org/barrow/mix"
	"example.org/barrow/units"
	"example.org/barrow/units/say"
)

// stack is so many packs of one kind.
type stack struct {
	text   string
	volume units.Volume // of one, as it is carried
	count  int64
	shape  string // "bag", "bale" or "bucket", by which it is drawn
}

// Order draws what is to be bought of each material: the need as a heap, and
// the packs that make it, areas by volume, so that three loads stand beside
// forty bags. With bags it draws the bulk that would do instead, and the other
// way round, where that is offered; without any offer, common packs.
func Order(p *mix.Plan) (list []Drawing) {
	left := 0
	for i := range p.Needs {
		n := &p.Needs[i]
		switch {
		case n.Buy.Plan <= mix.Slack:
		case len(list) == mostHeaps:
			left++
		default:
			k := start(p, -1, n.Material.Name)
			if k.heap(n); k.Kind != "" {
				list = k.onto(list)
			}
		}
	}
	return k0(p).more(list, left, moreHeaps)
}

// heap draws one need and its packs, or nothing where no pack of it is known.
func (k *pen) heap(n *mix.Need) {
	ordered, instead, left := k.stacks(n)
	stacks := append(ordered, instead...)
	if len(stacks) == 0 {
		return
	}
	k.Kind = "heap"

	// One area to a litre for all of them, the heap and every stack.
	area := math.Inf(1)
	most := func(room float64, v units.Volume) { area = min(area, room/v.Litres()) }
	most(95*95*repose, n.Buy.Plan)
	for i := range stacks {
		s := &stacks[i]
		total, fits := s.volume.Times(s.count)
		if !fits {
			total = units.MaxVolume
		}
		most(12_000, total)
	}
	need := k.say(heapNeed, mix.Shown(k.p.Voice(), n.Buy.Plan))
	k.notes("figure", need, 2)
	k.tell(heapTold, mix.Shown(k.p.Voice(), n.Buy.Plan), n.Material.Name)
	// A triangle of slope repose: its area is r times r times the slope.
	r := math.Sqrt(area * n.Buy.Plan.Litres() / repose)
	k.path("heap", true, left0, k.Height+r*repose, left0+r, k.Height, left0+2*r, k.Height+r*repose)
	k.grain("mulch-grain", left0, k.Height, 2*r, r*repose, func(u, v float64) bool {
		return math.Abs(u-left0-r) < (v-k.Height)/repose-3
	})
	k.line("grade", left0, k.Height+r*repose, right, k.Height+r*repose)
	k.Height += r*repose + 10
	for i := range ordered {
		k.stack(&ordered[i], area, heapBuy)
	}
	if left > 0 {
		k.tell(moreStacks, count(left))
		k.note(k.say(moreStacks, count(left)))
	}
	sentence := heapOr
	if len(ordered) == 0 {
		sentence = heapIs
	}
	for i := range instead {
		k.stack(&instead[i], area, sentence)
	}
	k.note(k.say(heapScale))
}

// stacks are what is ordered of a material, how many more kinds are, and what
// would do instead.
func (k *pen) stacks(n *mix.Need) (ordered, instead []stack, more int) {
	p := k.p
	var bulk, packs bool
	for i := range p.Order {
		l := &p.Order[i]
		if l.Material != n.Material {
			continue
		}
		if l.Offer.Bulk.Volume > 0 {
			bulk = true
		} else {
			packs = true
		}
		if len(ordered) == mostLines {
			more++
			continue
		}
		ordered = append(ordered, k.offered(l, l.Count))
	}
	loose := packs && !bulk // what would do instead: else packs alone
	for _, lines := range [...][]mix.Line{p.Order, p.Others} {
		for i := range lines {
			l := &lines[i]
			if len(ordered) > 0 && len(instead) == 0 && l.Material == n.Material && (l.Offer.Bulk.Volume > 0) == loose {
				instead = append(instead, k.offered(l, max(mix.Bags(n.Buy.Plan, l.Each.Plan), l.Offer.Least)))
			}
		}
	}
	if len(ordered) > 0 {
		return ordered, instead, more
	}
	choices := n.Choices(p.Measure)
	for _, kind := range [...]bool{false, true} { // the largest bag, and bulk
		for i := len(choices) - 1; i >= 0; i-- {
			if c := &choices[i]; c.Bulk == kind && c.Count <= 1e9 {
				shape := "bag"
				if c.Bulk {
					shape = "bucket"
				} else if c.Bale {
					shape = "bale"
				}
				instead = append(instead, k.packs(shape, c.Size, c.Count, ""))
				break
			}
		}
	}
	return nil, instead, 0
}

// offered are so many of a line's offer.
func (k *pen) offered(l *mix.Line, n int64) stack {
	o := l.Offer
	switch {
	case o.Bulk.Volume > 0:
		return k.packs("bucket", o.Bulk, n, "")
	case l.Each.Plan > o.Pack.Volume:
		return k.packs("bale", o.Pack, n, k.volume(l.Each.Plan))
	}
	return k.packs("bag", o.Pack, n, "")
}

// packs are so many packs of one shape, in words.
func (k *pen) packs(shape string, size mix.Size, n int64, opens string) stack {
	one, many := packOne, packBags
	switch {
	case shape == "bucket":
		one, many = packLoad, packBulk
	case shape == "bale" && opens != "":
		one, many = packOpen, packOpens
	case shape == "bale":
		one, many = packBale, packBales
	}
	if n == 1 {
		many = one
	}
	return stack{k.say(many, count(n), k.p.Tongue.Figure(size.String()), opens), size.Volume, n, shape}
}

const left0 = left // where heaps and packs start

// stack draws packs in rows, the last of them a part where a box stands for
// many.
func (k *pen) stack(s *stack, area float64, sentence say.Phrase) {
	k.notes("label", k.say(sentence, s.text), 2)
	k.tell(sentence, s.text)
	k.Description += "."
	each, boxes := int64(1), s.count
	for boxes > mostPacks {
		each *= 10
		boxes = (s.count + each - 1) / each
	}
	one := area * s.volume.Litres() * float64(each)
	if s.shape == "bucket" {
		one /= bucketPart
	}
	w := min(math.Sqrt(one*1.9), right-left0)
	h := one / w
	row := max(1, int64((right-left0+2)/(w+2)))
	var t trace
	for i := range boxes {
		x := left0 + float64(i%row)*(w+2)
		y := k.Height + float64(i/row)*(h+2)
		full := w
		if i == boxes-1 {
			full *= float64(s.count-i*each) / float64(each)
		}
		foot := full
		if s.shape == "bucket" {
			foot *= 2*bucketPart - 1
		}
		t.box(x, y, full, h, foot)
		if s.shape == "bale" { // its straps
			t.box(x+full*.3, y, 0, h, 0)
			t.box(x+full*.7, y, 0, h, 0)
		}
	}
	k.trace(s.shape, &t)
	rows := (boxes + row - 1) / row
	k.Height += float64(rows)*(h+2) + 2
	if each > 1 {
		k.note(k.say(packEach, count(each)))
	}
	k.Height += 4
}

// bucketPart is what a loader's bucket takes up of the box round it: its front
// slants.
const bucketPart = .85
