// Package spell finds the word that somebody meant when they typed another: one
// to three slips of the finger away, and never a guess beyond that.
//
// All functions are pure. Letters are compared without regard to case.
package spell

// Word returns the candidate closest to word, or "" when none is close enough.
// Close means that at most one letter (two from six letters on, three from eight) was
// added, dropped, changed or swapped with its neighbour. The first of equally close
// candidates wins. A candidate with other digits is a different thing and not a
// slip: #4 is never taken for #3, though 27 may be for 72.
func Word(word string, candidates []string) string {
	best, least := "", limit(word)+1
	figures := figuresOf(word)
	for _, c := range candidates {
		if figuresOf(c) != figures {
			continue
		}
		if d := Distance(word, c, least); d < least {
			best, least = c, d
		}
	}
	return best
}

// figuresOf counts how often each digit occurs in s.
func figuresOf(s string) (n [10]uint8) {
	for i := range len(s) {
		if c := s[i]; '0' <= c && c <= '9' {
			n[c-'0']++
		}
	}
	return n
}

// limit allows one slip in a short word, two from six letters on and three from eight.
func limit(word string) int {
	switch n := len(word); {
	case n < 2 || n > maxLetters:
		return 0
	case n < 6:
		return 1
	case n < 8:
		return 2
	default:
		return 3
	}
}

// maxLetters is the longest word compared; a longer one is close to nothing.
const maxLetters = 40

// Distance counts the letters added, dropped, changed or swapped with a
// neighbour between a and b, without regard to case (optimal string alignment).
// It gives up and returns stop once the count cannot stay below stop.
func Distance(a, b string, stop int) int {
	a, b = Lower(a), Lower(b)
	if len(a) > maxLetters || len(b) > maxLetters || len(a)-len(b) >= stop || len(b)-len(a) >= stop {
		return stop
	}
	var rows [3][maxLetters + 1]int // two rows back, one back, this one
	two, one, row := &rows[0], &rows[1], &rows[2]
	for j := 0; j <= len(b); j++ {
		one[j] = j
	}
	for i := 1; i <= len(a); i++ {
		row[0] = i
		least := i
		for j := 1; j <= len(b); j++ {
			change := one[j-1]
			if a[i-1] != b[j-1] {
				change++
			}
			row[j] = min(change, one[j]+1, row[j-1]+1)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				row[j] = min(row[j], two[j-2]+1)
			}
			least = min(least, row[j])
		}
		if least >= stop {
			return stop
		}
		two, one, row = one, row, two
	}
	return min(one[len(b)], stop)
}
