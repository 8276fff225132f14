package sure

// sum is the distribution of the sum of some independent uniform figures from 0
// to 1, which is that of Irwin and Hall. The mean of n triangles is such a sum
// of 2n parts, scaled. Between the places where it is worked out it is taken to
// be straight.
type sum struct {
	parts int
	cells int       // to one part
	under []float64 // the probability of at most i/cells, by i
	guide []int     // the last place at which under is at most j/len(guide), by j
}

// mostParts is the largest number of parts that is worked out. The sum of more
// is taken to be one of so many with the same spread: both are close to a normal
// distribution, and the probabilities are at most 0.0009 apart.
const mostParts = 32

// places is about how many places a sum has; it makes the straight pieces less
// than 0.0005 wrong.
const places = 256

// newSum works out the sum of so many parts, 2 or more. Its density is a
// B-spline, which follows from that of a part fewer by adding and multiplying
// positive numbers. So no rounding is made larger.
func newSum(parts int) *sum {
	s := &sum{parts: parts, cells: (places + parts - 1) / parts}
	m := s.cells
	spline := make([]float64, parts*m+1)
	for i := range min(2*m+1, len(spline)) {
		spline[i] = float64(min(i, 2*m-i)) / float64(m)
	}
	for order := 3; order <= parts+1; order++ {
		for i := len(spline) - 1; i >= 0; i-- {
			x := float64(i) / float64(m)
			v := float64(x * spline[i])
			if i >= m {
				v += float64((float64(order) - x) * spline[i-m])
			}
			spline[i] = v / float64(order-1)
		}
	}
	for i := m; i < len(spline); i++ {
		spline[i] = min(spline[i]+spline[i-m], 1)
	}
	spline[len(spline)-1] = 1
	s.under = spline
	s.fillGuide()
	return s
}

// fillGuide finds where the inverse has to start looking.
func (s *sum) fillGuide() {
	s.guide = make([]int, len(s.under)-1)
	at := 0
	for j := range s.guide {
		for at+2 < len(s.under) && s.under[at+1] <= float64(j)/float64(len(s.guide)) {
			at++
		}
		s.guide[j] = at
	}
}

// middle is the sum that is as likely exceeded as not.
func (s *sum) middle() float64 { return float64(s.parts) / 2 }

// at returns the sum that is not exceeded with probability u, which is between 0
// and 1.
func (s *sum) at(u float64) float64 {
	i := s.guide[min(int(u*float64(len(s.guide))), len(s.guide)-1)]
	for s.under[i+1] < u {
		i++
	}
	in := 0.0
	if rise := s.under[i+1] - s.under[i]; rise > 0 {
		in = (u - s.under[i]) / rise
	}
	return (float64(i) + in) / float64(s.cells)
}

// below is the probability that the sum is at most x.
func (s *sum) below(x float64) float64 {
	z := float64(x * float64(s.cells))
	switch last := len(s.under) - 1; {
	case !(z > 0):
		return 0
	case z >= float64(last):
		return 1
	}
	i := int(z)
	return s.under[i] + float64((z-float64(i))*(s.under[i+1]-s.under[i]))
}
