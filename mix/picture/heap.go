package picture

import (
	"math"

	"example.org/barrow/mix"
	"example.org/barrow/mix/catalog"
	"example.org/barrow/mix/yard"
	"example.org/barrow/units"
	"example.org/barrow/units/message"
)

// stack is a number of packs of one kind.
type stack struct {
	text   string
	volume units.Volume // of one, as it is carried
	count  int64
	drawn  class // aBag, aBale or aBucket
}

// Order draws what to buy of each material: the need as a pile, and the packs
// that make it. Areas are in proportion to volumes, so that three loads stand
// beside forty bags. Beside bags it draws the bulk that could be bought
// instead, and the other way round, where that is on offer. Without any offer
// it draws common packs.
func Order(p *mix.Plan) (list []Drawing) {
	left := 0
	for i := range p.Needs {
		n := &p.Needs[i]
		switch {
		case !n.Wanted():
		case len(list) == mostHeaps:
			left++
		default:
			k := newPen(p, -1, n.Material.Name)
			if k.heap(n); k.Kind != "" {
				list = k.onto(list)
			}
		}
	}
	return plainPen(p).more(list, left, moreHeaps)
}

// heap draws one need and its packs. It draws nothing when no pack is known.
func (k *pen) heap(n *yard.Need) {
	ordered, instead, left := k.stacks(n)
	stacks := append(ordered, instead...)
	if len(stacks) == 0 {
		return
	}
	k.Kind = "heap"

	// The pile and every stack have the same area for a litre.
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
	need := k.p.Printer().TradeVolume(n.Buy.Plan)
	k.notes(aFigure, k.sentence(heapNeed).text(need).String(), 2)
	k.sentence(heapDesc).text(need).text(n.Material.Name).describe()
	// A triangle of slope repose: its area is r times r times the slope.
	r := math.Sqrt(area * n.Buy.Plan.Litres() / repose)
	k.path(aHeap, true, left0, k.Height+r*repose, left0+r, k.Height, left0+2*r, k.Height+r*repose)
	k.grain(aMulchGrain, left0, k.Height, 2*r, r*repose, func(u, v float64) bool {
		return math.Abs(u-left0-r) < (v-k.Height)/repose-3
	})
	k.line(aGrade, left0, k.Height+r*repose, right, k.Height+r*repose)
	k.Height += r*repose + 10
	for i := range ordered {
		k.stack(&ordered[i], area, heapBuy)
	}
	if left > 0 {
		k.sentence(moreStacks).count(int64(left)).describe().note()
	}
	sentence := heapOr
	if len(ordered) == 0 {
		sentence = heapIs
	}
	for i := range instead {
		k.stack(&instead[i], area, sentence)
	}
	k.sentence(heapScale).note()
}

// stacks returns what is ordered of a material, what could be bought instead,
// and how many more kinds of packs there are.
func (k *pen) stacks(n *yard.Need) (ordered, instead []stack, more int) {
	p := k.p
	var bulk, packs bool
	for i := range p.Lines {
		l := &p.Lines[i]
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
	loose := packs && !bulk // whether to look for bulk instead, or for packs
	for _, lines := range [...][]yard.Line{p.Lines, p.Others} {
		for i := range lines {
			l := &lines[i]
			if len(ordered) > 0 && len(instead) == 0 && l.Material == n.Material && (l.Offer.Bulk.Volume > 0) == loose {
				instead = append(instead, k.offered(l, max(yard.Count(n.Buy.FixedPlan(), l.Each.FixedPlan()), l.Offer.Least)))
			}
		}
	}
	if len(ordered) > 0 {
		return ordered, instead, more
	}
	choices := n.Packs(p.Measure)
	for _, kind := range [...]bool{false, true} { // the largest bag, and bulk
		for i := len(choices) - 1; i >= 0; i-- {
			if c := &choices[i]; c.Bulk == kind && c.Count <= 1e9 {
				drawn := aBag
				if c.Bulk {
					drawn = aBucket
				} else if c.Bale {
					drawn = aBale
				}
				instead = append(instead, k.packs(drawn, c.Size, c.Count, ""))
				break
			}
		}
	}
	return nil, instead, 0
}

// offered returns n packs of a line's offer.
func (k *pen) offered(l *yard.Line, n int64) stack {
	o := l.Offer
	switch {
	case o.Bulk.Volume > 0:
		return k.packs(aBucket, o.Bulk, n, "")
	case l.Each.Plan > o.Pack.Volume:
		return k.packs(aBale, o.Pack, n, k.p.Printer().Volume(l.Each.Plan))
	}
	return k.packs(aBag, o.Pack, n, "")
}

// packs returns n packs of one shape, with their words.
func (k *pen) packs(drawn class, size catalog.Size, n int64, opens string) stack {
	one, many := packOne, packBags
	switch {
	case drawn == aBucket:
		one, many = packLoad, packBulk
	case drawn == aBale && opens != "":
		one, many = packOpen, packOpens
	case drawn == aBale:
		one, many = packBale, packBales
	}
	if n == 1 {
		many = one
	}
	return stack{k.sentence(many).count(n).figure(size.String()).text(opens).String(), size.Volume, n, drawn}
}

// left0 is where piles and packs start.
const left0 = left // where heaps and packs start

// stack draws packs in rows. Where one box stands for many packs, the last may
// be a part of a box.
func (k *pen) stack(s *stack, area float64, sentence message.Text) {
	text := k.sentence(sentence).text(s.text).String()
	k.notes(aLabel, text, 2)
	k.describe(text, ".")
	each, boxes := int64(1), s.count
	for boxes > mostPacks {
		each *= 10
		boxes = (s.count + each - 1) / each
	}
	one := area * s.volume.Litres() * float64(each)
	if s.drawn == aBucket {
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
		if s.drawn == aBucket {
			foot *= 2*bucketPart - 1
		}
		t.box(x, y, full, h, foot)
		if s.drawn == aBale { // its straps
			t.box(x+full*.3, y, 0, h, 0)
			t.box(x+full*.7, y, 0, h, 0)
		}
	}
	k.trace(s.drawn, &t)
	rows := (boxes + row - 1) / row
	k.Height += float64(rows)*(h+2) + 2
	if each > 1 {
		k.sentence(packEach).count(each).note()
	}
	k.Height += 4
}

// bucketPart is how much of its box a loader's bucket fills: its front slants.
const bucketPart = .85
