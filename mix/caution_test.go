package mix_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"example.org/barrow/mix"
)

// TestCautionsApply: every caution is shown by one job and not by another.
func TestCautionsApply(t *testing.T) {
	all := []string{
		taskJob(`"kind": "fill", "mix": "potting", "containers": [{"count": 64, "size": "#1"}]`),
		taskJob(`"kind": "cover", "area": "1 sq m", "layer": "5 in", "material": "gravel"`),
		taskJob(`"kind": "cover", "area": "1 sq m", "layer": "5 cm", "material": "compost", "stems": {"count": 1, "clear": "3 in"}`),
		taskJob(`"kind": "amend", "area": "10 sq m", "layer": "9 in", "into": "9 in", "material": "sand"`),
		taskJob(`"kind": "amend", "area": "10 sq m", "layer": "1 in", "into": "9 in", "material": "sand", "soil": "sandy"`),
		taskJob(`"kind": "amend", "area": "10 sq m", "layer": "1 in", "into": "9 in", "material": "bark-fines"`),
		taskJob(`"kind": "backfill", "holes": 1, "width": "18 in", "depth": "7 in", "ball": "#1", "share": "25%", "material": "compost"`),
		taskJob(`"kind": "backfill", "holes": 1, "width": "18 in", "depth": "7 in", "ball": "#1"`),
		taskJob(`"kind": "fill", "mix": "topsoil 1, compost 1", "containers": [{"count": 4, "size": "#15"}]`),
	}
	shown := make([]map[string]bool, len(all))
	for i, job := range all {
		p, err := mix.PlanDocument([]byte(job))
		if err != nil {
			t.Fatalf("%s: %v", job, err)
		}
		shown[i] = map[string]bool{}
		for _, c := range p.Cautions {
			shown[i][c.Code] = true
		}
	}
	codes := cautionCodes(t)
	if len(codes) < 14 {
		t.Fatalf("only %d cautions found: %v", len(codes), codes)
	}
	for _, code := range codes {
		some, none := false, false
		for _, s := range shown {
			some, none = some || s[code], none || !s[code]
		}
		if !some || none == (code == "authority") {
			t.Errorf("%s: shown by some job %v, left out by some job %v", code, some, none)
		}
	}
	for _, tt := range []struct {
		job  int
		code string
		want bool
	}{
		{0, "dust", true}, {0, "digging", false}, {0, "mulch-deep", false},
		{1, "mulch-deep", true}, {1, "mulch-stems", true}, {1, "legionella", false},
		{2, "mulch-stems", false}, {2, "salt", false}, {2, "legionella", true},
		{3, "sand-clay", true}, {3, "over-half", true}, {3, "vehicle", true},
		{4, "sand-clay", false}, {4, "over-half", false},
		{5, "nitrogen", true}, {5, "sand-clay", false}, {5, "digging", true},
		{6, "hole-only", true}, {6, "salt", true}, {8, "soil-in-pots", true}, {0, "soil-in-pots", false}, {7, "hole-only", false}, {7, "digging", true},
	} {
		if got := shown[tt.job][tt.code]; got != tt.want {
			t.Errorf("job %d shows %s: %v, want %v", tt.job, tt.code, got, tt.want)
		}
	}
}

// cautionCodes lists the code of every caution that stands in the source of
// packages mix and task, so that one which nobody shows is found too.
func cautionCodes(t *testing.T) (codes []string) {
	t.Helper()
	for _, dir := range []string{".", "task"} {
		files, err := filepath.Glob(dir + "/*.go")
		if err != nil || len(files) == 0 {
			t.Fatalf("%s: %v, %v", dir, files, err)
		}
		for _, name := range files {
			if strings.HasSuffix(name, "_test.go") {
				continue
			}
			f, err := parser.ParseFile(token.NewFileSet(), name, nil, 0)
			if err != nil {
				t.Fatal(err)
			}
			ast.Inspect(f, func(n ast.Node) bool {
				if lit, ok := n.(*ast.CompositeLit); ok {
					for _, one := range cautionsOf(lit) {
						codes = append(codes, codeOf(t, name, one))
					}
				}
				return true
			})
		}
	}
	slices.Sort(codes)
	if twice := len(codes) - len(slices.Compact(slices.Clone(codes))); twice > 0 {
		t.Errorf("%d cautions have the code of another: %v", twice, codes)
	}
	return codes
}

// cautionsOf is the literal itself when it is a caution, and its elements when it
// is a list of cautions that leave their type out.
func cautionsOf(lit *ast.CompositeLit) (list []*ast.CompositeLit) {
	if isCaution(lit.Type) {
		return []*ast.CompositeLit{lit}
	}
	if of, ok := lit.Type.(*ast.ArrayType); ok && isCaution(of.Elt) {
		for _, e := range lit.Elts {
			if one, ok := e.(*ast.CompositeLit); ok && one.Type == nil {
				list = append(list, one)
			}
		}
	}
	return list
}

// isCaution tells Caution and task.Caution from other types.
func isCaution(e ast.Expr) bool {
	switch e := e.(type) {
	case *ast.Ident:
		return e.Name == "Caution"
	case *ast.SelectorExpr:
		return e.Sel.Name == "Caution"
	}
	return false
}

// codeOf is the Code of a caution, which is a plain literal.
func codeOf(t *testing.T, file string, lit *ast.CompositeLit) string {
	t.Helper()
	for _, e := range lit.Elts {
		field, ok := e.(*ast.KeyValueExpr)
		if !ok {
			continue
		}
		if key, ok := field.Key.(*ast.Ident); !ok || key.Name != "Code" {
			continue
		}
		if value, ok := field.Value.(*ast.BasicLit); ok {
			if code, err := strconv.Unquote(value.Value); err == nil {
				return code
			}
		}
	}
	t.Errorf("%s: a caution without a code that can be read", file)
	return ""
}
