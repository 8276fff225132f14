package ground

import (
	"strconv"

	"example.org/barrow/mix/doc"
	"example.org/barrow/mix/json"
	"example.org/barrow/units"
	"example.org/barrow/units/message"
)

// Limits on an outline. Within a kilometre every product below fits 64 bits,
// and testing every pair of sides stays fast.
const (
	maxCorners = 500
	maxOffset  = 1000 * units.Metre
)

// point is a corner in whole micrometres.
type point struct{ x, y int64 }

// corners reads an outline: a list of pairs of lengths.
var corners = doc.Type{Takes: "list", Form: "list", Read: func(_ *doc.Type, r *doc.Reader, n *json.Node, at any) {
	*at.(*[][2]units.Length) = doc.List(r, n, "corners", readCorner)
}}

// readCorner reads one pair of lengths.
func readCorner(r *doc.Reader, n *json.Node, p *[2]units.Length) {
	if n.Kind != json.Array || len(n.Items) != 2 {
		r.Problem(doc.AreaCorner, `a corner is two lengths, such as ["12 ft", "0 ft"]`)
		return
	}
	for i := range p {
		r.EnterAt(i)
		p[i] = units.Length(doc.Quantify(r, &n.Items[i], `a length such as "12 ft" or "-3 ft"`, false, units.FixedOffset))
		if p[i] > maxOffset || p[i] < -maxOffset {
			r.Problem(doc.AreaFar, "at most 1 km from the origin")
		}
		r.Leave()
	}
}

// polygon measures an outline by the shoelace formula. It refuses an outline that
// crosses or touches itself, to the micrometre: such an outline has no definite
// area.
func (a *Area) polygon(r *doc.Reader) units.Fixed {
	outer := a.Corners
	r.Enter("corners")
	defer r.Leave()
	if len(outer) > maxCorners {
		r.Problem(doc.AreaCorners, "at most 500 corners")
		return units.Fixed{}
	}
	for i, k := range outer { // a document's corners are bounded as they are read
		if max(k[0], -k[0], k[1], -k[1]) > maxOffset {
			r.EnterAt(i)
			r.Problem(doc.AreaFar, "at most 1 km from the origin")
			r.Leave()
			return units.Fixed{}
		}
	}
	p := outline(outer)
	if len(p) < 3 {
		r.Problem(doc.AreaCorners, "an outline has at least three corners")
		return units.Fixed{}
	}
	if straight(p) {
		r.Problem(doc.AreaSmall, "the corners lie on one line")
		return units.Fixed{}
	}
	if i, j, cross := crossing(p); cross {
		r.EnterAt(j)
		r.Problem(doc.AreaCrossing, message.Of(
			"the side that starts here meets the one that starts at corner {0}: list the corners in order, one way round",
			strconv.Itoa(i+1)))
		r.Leave()
		return units.Fixed{}
	}
	return a.shoelace()
}

// shoelace returns the area inside the corners, which lie within [maxOffset] and
// do not cross. Half of each product is added, so that the bounds of areas hold for
// it. Sums may wrap on the way; the total fits.
func (a *Area) shoelace() (area units.Fixed) {
	corner := func(i int) (x, y units.Fixed) {
		field := json.PathIndex("corners", i)
		k := a.Corners[i]
		return a.FixedLength(json.PathIndex(field, 0), k[0]), a.FixedLength(json.PathIndex(field, 1), k[1])
	}
	x0, y0 := corner(0)
	fromX, fromY := units.Fixed{}, units.Fixed{}
	for i := 1; i < len(a.Corners); i++ {
		x, y := corner(i)
		x, y = x.Minus(x0), y.Minus(y0)
		left, _ := fromX.MulDiv(1, 2).By(y) // within a kilometre every product fits
		right, _ := x.MulDiv(1, 2).By(fromY)
		area, fromX, fromY = area.Plus(left).Minus(right), x, y
	}
	if area.Negative() {
		return units.Fixed{}.Minus(area)
	}
	return area
}

// outline rounds the corners to micrometres. It drops a last corner that
// repeats the first, which people write to close the line.
func outline(corners [][2]units.Length) []point {
	p := make([]point, len(corners))
	for i, k := range corners {
		p[i] = point{micrometre(k[0]), micrometre(k[1])}
	}
	if n := len(p); n > 1 && p[0] == p[n-1] {
		p = p[:n-1]
	}
	return p
}

// micrometre rounds to the nearest, halves away from zero.
func micrometre(l units.Length) int64 {
	if l < 0 {
		return -int64((-l + 500) / 1000)
	}
	return int64((l + 500) / 1000)
}

// straight reports whether all corners lie on one line.
func straight(p []point) bool {
	for i := 2; i < len(p); i++ {
		if turn(p[0], p[1], p[i]) != 0 {
			return false
		}
	}
	return p[0] != p[1] // otherwise the repeated corner is the mistake
}

// crossing finds two sides that meet where they should not. It returns the
// sides by their first corners.
func crossing(p []point) (i, j int, found bool) {
	n := len(p)
	for j := range p {
		a, b := p[j], p[(j+1)%n]
		if a == b {
			return (j + 1) % n, j, true
		}
		for i := range j {
			u, v := p[i], p[(i+1)%n]
			switch {
			case i == j-1: // they share corner j, so only folding back is wrong
				if foldsBack(u, a, b) {
					return i, j, true
				}
			case j == n-1 && i == 0: // they share corner 0
				if foldsBack(a, b, v) {
					return i, j, true
				}
			case beside(u, v, a, b):
			case meet(u, v, a, b):
				return i, j, true
			}
		}
	}
	return 0, 0, false
}

// turn returns the direction of the turn from a over b to c: positive for left,
// zero for straight on.
func turn(a, b, c point) int {
	cross := (b.x-a.x)*(c.y-a.y) - (b.y-a.y)*(c.x-a.x)
	switch {
	case cross > 0:
		return 1
	case cross < 0:
		return -1
	}
	return 0
}

// foldsBack reports whether the side from b to c runs back along the side from
// a to b.
func foldsBack(a, b, c point) bool {
	return turn(a, b, c) == 0 && (within(a, b, c) || within(b, c, a))
}

// within reports whether p, which is on the line through a and b, is between
// them.
func within(a, b, p point) bool {
	return min(a.x, b.x) <= p.x && p.x <= max(a.x, b.x) && min(a.y, b.y) <= p.y && p.y <= max(a.y, b.y)
}

// beside reports whether the sides ab and cd are apart in one direction, which is
// quick to see of most pairs.
func beside(a, b, c, d point) bool {
	return max(a.x, b.x) < min(c.x, d.x) || max(c.x, d.x) < min(a.x, b.x) ||
		max(a.y, b.y) < min(c.y, d.y) || max(c.y, d.y) < min(a.y, b.y)
}

// meet reports whether the sides ab and cd have a point in common.
func meet(a, b, c, d point) bool {
	t1, t2, t3, t4 := turn(a, b, c), turn(a, b, d), turn(c, d, a), turn(c, d, b)
	if t1 != t2 && t3 != t4 {
		return true
	}
	return t1 == 0 && within(a, b, c) || t2 == 0 && within(a, b, d) ||
		t3 == 0 && within(c, d, a) || t4 == 0 && within(c, d, b)
}
