package sure

// level returns the lowest level whose plan has a chance of at least p. Items
// planned at a level have a joint chance of at most that level and, by the sum
// of what each misses, at least a bound. Only sampling can put the answer
// outside the two, so they are tried first and widened when needed.
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

// narrow returns the lowest number above low at which over, which rises, is not
// below 0. It is at most high; below and above are the values at the ends. Each
// step aims where the line between the ends crosses 0. An end that stays counts
// half the next time (the Illinois rule), and every third step halves the
// interval, so that progress never stalls.
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
