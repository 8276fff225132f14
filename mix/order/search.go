package order

import (
	"example.org/barrow/mix/stable"
	"example.org/barrow/units"
)

// search is one request being worked on.
type search struct {
	r      *Request
	lines  []line // what can be used, by material, then by offer
	mats   []mat  // the needed materials
	best   found
	work   int64
	budget int64
	most   int64 // on what may be left over in all; none is no limit
	guess  bool  // the figure of the aim is not proven
	open   int64 // the least, in scale, that an order not tried may cost
	walk   walk
	spare  loader

	covers []cover  // stock for newCover
	nest   []pick   // for nests
	counts []int64  // for spread
	picked []*cover // for bests
	uses   []int64  // for the lines' use
	picker picker
	ints   []int64 // stock for newCover
	picks  []pick  // stock for newCover
}

// mat is a material that is needed.
type mat struct {
	target, slack int64 // target is the need less the slack
	all           []*line
	lines         []*line // of all, what can come the present way
	rows          int
	seed          []pick // of all, a cover that the aim allows
	mostLeft      int64  // covers that leave more over are not allowed
	mostPacks     int64  // covers with more packs to lift are not allowed
	lift          int64  // added to the charge of a pack lifted, in scale

	floor     int64  // no cover is charged less at the present charges
	best      *cover // one that is charged that, or the best known
	free      *cover // the best without charges
	freeFloor int64
	pool      []*cover // to try again when charges change
	list      []*cover // to combine for the present trips and loads
}

// Search finds the order that comes first by r's aim. It is exact: Proven is
// true when no other order is better. When r.Budget runs out first, Proven is
// false, the order is the best found and Bound shows how much it may lose. The
// same request always gives the same order. The error is an *Error. r is not
// changed.
func Search(r Request) (Order, error) {
	s, err := newSearch(&r)
	if err != nil {
		return Order{}, err
	}
	if r.Aim != LeastCost {
		s.settleFigure()
	}
	s.run()
	return s.order()
}

// newSearch checks the request and prepares its lines and materials.
func newSearch(r *Request) (*search, error) {
	if err := r.check(); err != nil {
		return nil, err
	}
	s := &search{r: r, budget: r.Budget, most: none, open: none}
	if s.budget == 0 {
		s.budget = DefaultBudget
	}
	s.walk.s = s
	s.fillLines()
	return s, s.addMaterials()
}

// fillLines makes a line of every offer that can be used, sorted by material.
func (s *search) fillLines() {
	s.lines = make([]line, 0, len(s.r.Offers))
	for i := range s.r.Offers {
		if s.r.Needs[s.r.Offers[i].Material] <= s.r.Slack {
			continue
		}
		if l, ok := s.r.newLine(i); ok {
			s.lines = append(s.lines, l)
		}
	}
	for i := range s.lines {
		s.work += went(len(s.lines[i].steps))
	}
	s.work += went(len(s.lines))
	stable.Sort(s.lines, func(a, b line) int { return s.r.Offers[a.offer].Material - s.r.Offers[b.offer].Material })
}

// addMaterials adds the materials that are needed. It fails when what can be
// used does not cover one of them.
func (s *search) addMaterials() error {
	n, at := len(s.lines), 0
	all := make([]*line, 2*n)
	for k := range s.lines {
		all[k] = &s.lines[k]
	}
	s.mats = make([]mat, 0, len(s.r.Needs))
	for i, need := range s.r.Needs {
		if need <= s.r.Slack {
			continue
		}
		from, sum := at, int64(0)
		for ; at < n && s.r.Offers[s.lines[at].offer].Material == i; at++ {
			sum = plus(sum, times(s.lines[at].yield, s.lines[at].most))
		}
		if sum < int64(need-s.r.Slack) {
			return s.r.lack(i)
		}
		s.mats = append(s.mats, mat{target: int64(need - s.r.Slack), slack: int64(s.r.Slack),
			mostLeft: none, mostPacks: none, all: all[from:at:at], lines: all[n+from : n+from : n+at]})
	}
	return nil
}

// lack says why material i cannot be covered: not offered, too heavy, or short.
func (r *Request) lack(i int) error {
	e := &Error{Code: ErrNoOffer, Material: i, Offer: -1}
	var stock int64
	for k := range r.Offers {
		o := &r.Offers[k]
		if o.Material != i {
			continue
		}
		if r.modes(o) == 0 {
			if e.Code == ErrNoOffer {
				e.Code, e.Offer = ErrTooHeavy, k
			}
			continue
		}
		if e.Code != ErrShort {
			e.Code, e.Offer = ErrShort, k
		}
		if !o.Limited {
			stock = none
		} else if o.Stock >= o.Least {
			stock = plus(stock, times(int64(o.Yield), o.Stock))
		}
	}
	if stock >= int64(r.Needs[i]-r.Slack) {
		e.Code = ErrRange
	}
	return e
}

// run searches every way of bringing the order home.
func (s *search) run() {
	ways := []mode{hauled}
	if s.r.Delivery != nil {
		ways = []mode{hauled, delivered, hauled | delivered}
	}
	if len(s.mats) == 0 {
		s.best.counts = make([]int64, len(s.r.Offers))
		return
	}
	for _, m := range ways {
		if w := s.newWay(m); w != nil {
			w.search()
		}
	}
}

// order returns the best order found.
func (s *search) order() (Order, error) {
	if s.best.counts == nil {
		return Order{}, &Error{Code: ErrRange, Offer: -1, Material: -1}
	}
	r, f := s.r, &s.best
	o := Order{Work: s.work, Packs: f.packs, Left: make([]units.Volume, len(r.Needs))}
	s.home(&o)
	for i := range r.Offers {
		if n := f.counts[i]; n > 0 {
			of := &r.Offers[i]
			goods, tax := of.Paid(n, r.Tax)
			o.Goods, o.Tax, o.Deposit = o.Goods+goods, o.Tax+tax, o.Deposit+units.Money(times(n, int64(of.Deposit)))
			o.Left[of.Material] += units.Volume(n) * of.Yield
		}
	}
	for i := range o.Left {
		o.Left[i] = max(0, o.Left[i]-r.Needs[i])
	}
	// home may have found fewer trips and loads than the search did.
	o.Cost = o.Goods + o.Tax + o.Driving + o.Fees
	o.Bound = min(o.Cost, units.Money(up(max(0, s.open), scale)))
	o.Proven = s.open > int64(o.Cost)*scale && !s.guess
	return o, nil
}
