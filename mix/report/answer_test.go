package report_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"example.org/barrow/mix"
	"example.org/barrow/mix/lang"
	"example.org/barrow/mix/report"
)

// TestDoubtfulFigure: what may be thousands is explained with the reader's own mark.
func TestDoubtfulFigure(t *testing.T) {
	_, err := mix.PlanDocument([]byte(`{"schema": 1, "tasks": [
		{"kind": "cover", "area": "1 sq m", "layer": "1,500 mm", "material": "bark-mulch"}]}`))
	point, comma := string(report.Problems(err, nil)), string(report.Problems(err, (*lang.Language)(nil).Comma(true)))
	require.Contains(t, point, "use a point for decimals")
	require.Contains(t, comma, "use a comma for decimals")
	require.Equal(t, strings.Split(point, "hint")[0], strings.Split(comma, "hint")[0])
}
