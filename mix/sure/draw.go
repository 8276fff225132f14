package sure

// drawer draws a block of points at a time.
type drawer struct {
	*plan
	columns     [][]float64 // of the plan's columns
	product     []float64
	base, slope [][]float64 // per live item
}

// drawer returns a drawer with room for one block.
func (p *plan) drawer() *drawer {
	return &drawer{p, table(len(p.columns), block), make([]float64, block),
		table(len(p.live), block), table(len(p.live), block)}
}

// table returns rows of width numbers, all in one allocation.
func table(rows, width int) [][]float64 {
	all := make([]float64, rows*width)
	out := make([][]float64, rows)
	for i := range out {
		out[i] = all[i*width : (i+1)*width : (i+1)*width]
	}
	return out
}

// draw fills base and slope for the block of points that starts at first.
func (d *drawer) draw(shift, first int) {
	for i := range d.plan.columns {
		d.plan.columns[i].fill(d.columns[i], shift, first)
	}
	for i := range d.base {
		clear(d.base[i])
		clear(d.slope[i])
	}
	for i := range d.products {
		d.multiply(d.products[i].columns)
		d.spread(&d.products[i])
	}
}

// fill writes the effects of the column's factor at a block of points.
func (c *column) fill(out []float64, shift, first int) {
	coordinates(out, shift, first, c.dim)
	for k, u := range out {
		out[k] = c.law.at(u)
	}
	if c.use.Kind == Loss {
		for k, x := range out {
			out[k] = 1 / (1 - x)
		}
	}
}

// multiply sets product to the product of the columns.
func (d *drawer) multiply(columns []int) {
	if len(columns) == 0 {
		for k := range d.product {
			d.product[k] = 1
		}
		return
	}
	copy(d.product, d.columns[columns[0]])
	for _, c := range columns[1:] {
		by := d.columns[c][:len(d.product)]
		for k := range d.product {
			d.product[k] *= by[k]
		}
	}
}

// spread adds the product to its items. The conversion to float64 stops a
// processor from fusing the product with the sum, which would change the last
// bit.
func (d *drawer) spread(p *product) {
	to := d.base
	if p.pivot {
		to = d.slope
	}
	for _, s := range p.shares {
		sum := to[s.live][:len(d.product)]
		for k, x := range d.product {
			sum[k] += float64(s.litres * x)
		}
	}
}

// store keeps the base and slope at every point, samples numbers of each per
// live item, for answers that need them repeatedly.
func (p *plan) store() (base, slope [][]float64) {
	base, slope = table(len(p.live), samples), table(len(p.live), samples)
	d := p.drawer()
	for at := 0; at < samples; at += block {
		d.draw(at/points, at%points)
		for i := range p.live {
			copy(base[i][at:], d.base[i])
			copy(slope[i][at:], d.slope[i])
		}
	}
	return base, slope
}

// sorted returns the values of every live item in order: base + slope * pivot,
// with the pivot drawn as well.
func (p *plan) sorted(base, slope [][]float64) [][]float64 {
	out := table(len(base), samples)
	u := make([]float64, samples)
	if p.pivot != nil {
		c := column{Use{0, p.kind}, *p.pivot, p.axis}
		for at := 0; at < samples; at += block {
			c.fill(u[at:at+block], at/points, at%points)
		}
	}
	for i := range out {
		for k := range u {
			out[i][k] = base[i][k] + float64(slope[i][k]*u[k])
		}
		sortVolumes(out[i])
	}
	return out
}
