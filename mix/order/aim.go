package order

import (
	"cmp"

	"example.org/barrow/mix/stable"
)

// settleFigure finds the best possible figure of the aim: the least left over,
// or the fewest packs lifted. Both are sums over the materials, and trips and
// loads do not affect them, so each material has its own best. After this, only
// covers with that figure compete on cost.
func (s *search) settleFigure() {
	for i := range s.mats {
		m := &s.mats[i]
		if s.r.Aim == LeastLeft {
			s.settleLeft(m)
		} else {
			s.settlePacks(m)
		}
	}
}

// settleLeft finds the least that a cover of m can leave over, and keeps that
// cover as m.seed. Each material may use a share of the budget; when that is
// cut short, the figure counts as a guess.
func (s *search) settleLeft(m *mat) {
	share := s.budget / 4 / int64(len(s.mats))
	w := leftWalk{s: s, best: none, slack: m.slack, until: plus(s.work, max(leftWork, share))}
	w.at = make([]int, len(m.all))
	for i := range w.at {
		w.at[i] = i
	}
	stable.Sort(w.at, func(i, k int) int { return cmp.Compare(m.all[k].yield, m.all[i].yield) })
	for _, i := range w.at {
		w.lines = append(w.lines, m.all[i])
	}
	w.divisors()
	s.work += went(len(m.all))
	w.from(0, m.target)
	m.mostLeft = w.best
	m.seed = w.seed
	stable.Sort(m.seed, func(a, b pick) int { return cmp.Compare(a.at, b.at) })
	s.guess = s.guess || w.cut
}

// leftWork is the work that each material is allowed when settling what is left
// over, even under a small budget.
const leftWork = 20_000

// leftWalk goes depth first through the counts of one material, with the
// largest packs first. It knows only volumes, not prices.
type leftWalk struct {
	s     *search
	lines []*line
	at    []int   // by line, its index into the material's
	open  []pick  // of the material's lines, what is bought
	seed  []pick  // the best
	parts []int64 // by line, what divides its yield and all after it
	slack int64
	best  int64
	until int64
	cut   bool
}

// divisors fills parts. Packs of 50 and 30 litres can only fill multiples of
// 10, which lets past rule out what cannot be reached.
func (w *leftWalk) divisors() {
	w.parts = make([]int64, len(w.lines)+1)
	for i := len(w.lines) - 1; i >= 0; i-- {
		w.parts[i] = gcd(w.lines[i].yield, w.parts[i+1])
	}
}

// gcd returns the greatest common divisor of a and b.
func gcd(a, b int64) int64 {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

// from covers short with the lines from i on, trying large counts first: those
// leave the least to fill, so a cover without waste comes early.
func (w *leftWalk) from(i int, short int64) {
	depth := len(w.open)
	for ; i < len(w.lines) && w.best > 0 && !w.cut && !w.past(i, short); i++ {
		l := w.lines[i]
		full := up(short, l.yield)
		w.open = append(w.open, pick{at: w.at[i]})
		if n := max(full, l.least); n <= l.most {
			w.open[depth].count = n
			w.close(n*l.yield - short)
		}
		for n := min(full-1, l.most); n >= l.least && !w.cut; n-- {
			w.s.work++
			w.cut = w.s.work > w.until
			w.open[depth].count = n
			w.from(i+1, short-n*l.yield)
		}
		w.open = w.open[:depth]
		if i >= few && i%many == 0 {
			w.s.work++
			w.cut = w.cut || w.s.work > w.until
		}
	}
}

// close takes a complete cover that is over the target by so much. Slack counts
// as needed, so it does not count as left over.
func (w *leftWalk) close(over int64) {
	if left := max(0, over-w.slack); left < w.best {
		w.best = left
		w.seed = append(w.seed[:0], w.open...)
	}
}

// past reports whether no count of the packs from i on can be better than the
// best: short is only ever covered by multiples of their common divisor.
func (w *leftWalk) past(i int, short int64) bool {
	over := -short % w.parts[i]
	if over < 0 {
		over += w.parts[i]
	}
	return max(0, over-w.slack) >= w.best
}

// settlePacks finds the fewest packs that must be lifted by hand to cover m. It
// is the search for the cheapest cover, with a price of one for each pack
// lifted by hand and nothing for any other. Afterwards m.lift is a charge per
// pack that steers later searches towards that number.
func (s *search) settlePacks(m *mat) {
	hands := make([]line, len(m.all))
	hand := mat{target: m.target, slack: m.slack, mostLeft: none, mostPacks: none}
	most := int64(1) // lifted in any cover
	for i, l := range m.all {
		hands[i] = line{yield: l.yield, price: l.hand, den: 1, least: l.least, most: l.most,
			hand: l.hand, floor: l.hand * scale}
		hand.lines = append(hand.lines, &hands[i])
		m.lift = max(m.lift, l.floor)
		most += l.widest(m.target)
	}
	w := &s.walk
	w.start(&hand, nil)
	w.best, w.limit, w.every, w.ties = nil, none>>2, false, false
	w.until = plus(s.work, coverWork)
	w.from(0, m.target, 0)
	s.guess = s.guess || w.cut
	if w.best == nil {
		m.lift = 0
		return
	}
	m.mostPacks, m.seed = w.best.packs, w.best.counts
	m.lift = min(m.lift, widest>>3/most) + 1
}
