package sure

// level returns the least level whose plan has a chance of at least p. Items
// planned at a level have a joint chance of no more than that level and, by
// the sum of what each misses, no less than a bound. Only sampling takes the
// answer out of these, so they are tried first and widened as needed.
func (j *joint) level(p float64, plan func(level int) []float64) int {
	over := func(level int) float64 {
		if level >= fullLevel {
			return 1 - p
		}
		return j.chance(plan(level)) - p
	}
	low := int(p * fullLevel)
	high := fullLevel - int((1-p)/float64(len(j.live))*fullLevel)
	below := over(low)
	for width := steps * 16; low > 0 && below >= 0; width *= 4 {
		high, low = low, max(low-width, 0)
		below = over(low)
	}
	above := over(high)
	for width := steps * 16; above < 0; width *= 4 {
		low, below = high, above
		high = min(high+width, fullLevel)
		above = over(high)
	}
	return narrow(low, high, below, above, over)
}

// narrow returns the least number above low where over, which rises, is not
// below 0; it is at high, with the values given. It aims where the line
// between the ends crosses 0; an end that stays is counted half the next time
// (the Illinois rule), and every third step halves, so that it never creeps.
func narrow(low, high int, below, above float64, over func(int) float64) int {
	stayed := 0 // which end did: -1 low, 1 high
	for step := 1; high-low > 1; step++ {
		mid := low + (high-low)/2
		if step%3 > 0 && below < 0 {
			aim := below / (below - above) * float64(high-low)
			mid = min(max(low+int(aim), low+1), high-1)
		}
		value := over(mid)
		if value >= 0 {
			high, above = mid, value
			if stayed == -1 {
				below /= 2
			}
			stayed = -1
		} else {
			low, below = mid, value
			if stayed == 1 {
				above /= 2
			}
			stayed = 1
		}
	}
	return high
}
