package order

import "math/bits"

// row is a limit that every way of loading keeps. Summed over all packs, count
// times line.use is at most trip for each trip plus load for each load, in
// parts of one. It is a relaxation: rows are totals, and the rounded shares
// below that count packs too big to go side by side.
type row struct {
	trip, load int64
	flat       int64 // for any number of trips and loads
	most       int64 // the limit for the present trips and loads
	charge     int64 // the present price of a whole vehicle, in scale
	top        int64 // the highest charge that keeps sums in range
}

// vehicle is what a trip or a load can carry; none is no limit.
type vehicle struct{ payload, room int64 }

// limited reports whether the vehicle has any limit. Without one, a single trip
// carries everything.
func (v vehicle) limited() bool { return v.payload != none || v.room != none }

// share measures a pack against one vehicle, in parts of one.
type share func(*line) int64

// shares lists the measures that hold for v: mass and room as they are, and
// each rounded as if k+1 packs had k places, which is a dual feasible function.
func (v vehicle) shares() (plain, rounded []share) {
	for _, side := range []struct {
		most int64
		of   func(*line) int64
	}{{v.payload, (*line).weight}, {v.room, (*line).bulk}} {
		if side.most == none {
			continue
		}
		plain = append(plain, func(l *line) int64 { return muldiv(side.of(l), one, side.most) })
		for k := int64(1); k <= 4; k++ {
			rounded = append(rounded, func(l *line) int64 { return places(side.of(l), side.most, k) })
		}
	}
	return plain, rounded
}

// weight is the mass of one pack, as a function that rows can be made of.
func (l *line) weight() int64 { return l.mass }

// bulk is the room of one pack, as a function that rows can be made of.
func (l *line) bulk() int64 { return l.room }

// places is the part of one vehicle that a pack of size uses when counted in
// k-ths: floor((k+1)x)/k, or x itself where (k+1)x is whole. For packs that go
// together these parts never add up to more than the whole.
func places(size, most, k int64) int64 {
	q := muldiv(size, k+1, most)
	if uint64(q)*uint64(most) == uint64(k+1)*uint64(size) { // the remainder is zero: it is below 2^63
		return muldiv(size, one, most)
	}
	return q * one / k
}

// table collects the rows for a set of lines.
type table struct {
	lines []*line
	rows  []row
}

// add makes a row of a measure, unless it says no more than row over does. It
// returns the row's index, or -1.
func (t *table) add(over int, trip, load int64, of share) int {
	stronger := over < 0
	k := len(t.rows)
	for _, l := range t.lines {
		l.use = append(l.use, of(l))
		stronger = stronger || l.use[k] > l.use[over]
	}
	if !stronger {
		for _, l := range t.lines {
			l.use = l.use[:k]
		}
		return -1
	}
	t.rows = append(t.rows, row{trip: trip, load: load})
	return k
}

// single makes the rows of one vehicle, for the packs that can go in no other.
func (t *table) single(v vehicle, must mode, trip, load int64) {
	only := func(f share) share {
		return func(l *line) int64 {
			if l.modes != must {
				return 0
			}
			return f(l)
		}
	}
	plain, rounded := v.shares()
	for i, f := range plain {
		over := t.add(-1, trip, load, only(f))
		for _, g := range rounded[i*4 : i*4+4] {
			t.add(over, trip, load, only(g))
		}
	}
}

// joint makes the rows over both vehicles for packs that can go in either. Such
// a pack counts with the smaller of its two parts, where a trip is worth a and
// a load b.
func (t *table) joint(haul, drop vehicle, a, b int64) {
	most := max(a, b, 1)
	trip, load := muldiv(a, one, most), muldiv(b, one, most)
	hs, _ := haul.shares()
	ds, _ := drop.shares()
	for _, h := range hs {
		for _, d := range ds {
			t.add(-1, trip+1, load+1, func(l *line) int64 {
				byTrip, byLoad := muldiv(h(l), trip, one), muldiv(d(l), load, one)
				switch l.modes {
				case hauled:
					return byTrip
				case delivered:
					return byLoad
				}
				return min(byTrip, byLoad)
			})
		}
	}
}

// total makes the row of one quantity over both vehicles.
func (t *table) total(haul, drop int64, of func(*line) int64) {
	if haul == none || drop == none {
		return
	}
	most := max(haul, drop)
	t.add(-1, muldiv(haul, one, most)+1, muldiv(drop, one, most)+1,
		func(l *line) int64 { return muldiv(of(l), one, most) })
}

// leftRow makes the row for all that may be bought, when only so much may be
// left over.
func (t *table) leftRow(most int64, mats []mat) {
	all := most
	for i := range mats {
		all = plus(all, mats[i].target+mats[i].slack)
	}
	if all == none {
		return
	}
	k := t.add(-1, 0, 0, func(l *line) int64 { return muldiv(l.yield, one, max(all, 1)) })
	t.rows[k].flat = one
}

// charge is what the shares of one pack are charged, rounded down.
func charge(use []int64, rows []row) (sum int64) {
	for k := range rows {
		if c := rows[k].charge; c > 0 && use[k] > 0 {
			hi, lo := bits.Mul64(uint64(c), uint64(use[k]))
			sum += int64(hi<<44 | lo>>20)
		}
	}
	return sum
}
