package main

import (
	"fmt"
	"go/ast"
	"go/token"
	"go/types"
	"slices"
	"strconv"
	"strings"
)

// Operators that stand in for one another, and the function of switch.go.txt
// that has both. Comparing for order has two mutants: the bound in or out, and
// the opposite.
var (
	order = map[token.Token]struct{ call, bound, opposite string }{
		token.LSS: {"mutantLess", "<=", ">="}, token.LEQ: {"mutantLessOrEqual", "<", ">"},
		token.GTR: {"mutantMore", ">=", "<="}, token.GEQ: {"mutantMoreOrEqual", ">", "<"},
	}
	arithmetic = map[token.Token]struct{ call, other string }{
		token.ADD: {"mutantPlus", "-"}, token.SUB: {"mutantMinus", "+"}, token.MUL: {"mutantTimes", "/"},
		token.QUO: {"mutantOver", "*"}, token.REM: {"mutantRest", "*"},
	}
	equality = map[token.Token]string{token.EQL: "!=", token.NEQ: "=="}
	step     = map[token.Token]struct{ call, other string }{
		token.INC: {"mutantNext", "--"}, token.DEC: {"mutantPrevious", "++"},
	}
)

// source is one file of a package, and what to change in it.
type source struct {
	file  string // path in the repository
	text  []byte
	edits []edit
	fset  *token.FileSet
	info  *types.Info
	pkg   string
	name  string // of the package
	next  *int32 // the next mutant's id
	in    string
	found []*mutant
	same  map[string]int
}

// edit replaces a piece of a file. Where several start at one point, those that
// close a call come first, the innermost first.
type edit struct {
	start, end int
	with       string
	closes     bool
}

// walk finds the mutants of a file, and the edits that put them into it.
func (s *source) walk(f *ast.File) {
	for _, d := range f.Decls {
		s.in = declared(d)
		ast.Inspect(d, func(n ast.Node) bool {
			switch n := n.(type) {
			case *ast.BinaryExpr:
				s.binary(n)
			case *ast.UnaryExpr:
				s.unary(n)
			case *ast.IncDecStmt:
				s.step(n)
			case *ast.ValueSpec:
				if g, ok := d.(*ast.GenDecl); ok && g.Tok == token.CONST {
					s.figures(n)
				}
			}
			return true
		})
	}
}

// declared names a declaration.
func declared(d ast.Decl) string {
	f, ok := d.(*ast.FuncDecl)
	if !ok {
		return "declarations"
	}
	if f.Recv == nil {
		return f.Name.Name
	}
	t := f.Recv.List[0].Type
	if star, ok := t.(*ast.StarExpr); ok {
		t = star.X
	}
	if index, ok := t.(*ast.IndexExpr); ok {
		t = index.X
	}
	return fmt.Sprint(t) + "." + f.Name.Name
}

func (s *source) binary(n *ast.BinaryExpr) {
	constant := s.info.Types[n].Value != nil || s.shifted(n) || s.generic(n.X)
	if o, ok := order[n.Op]; ok {
		bound, opposite := s.mutant(n, n.OpPos, n.Op, o.bound), s.mutant(n, n.OpPos, n.Op, o.opposite)
		if !constant {
			s.call(o.call, n, bound, opposite)
		}
	}
	if other, ok := equality[n.Op]; ok {
		if m := s.mutant(n, n.OpPos, n.Op, other); !constant {
			s.number(m)
			s.insert(n.Pos(), fmt.Sprintf("mutantNot(%d, ", m.id))
			s.closing(n.End())
		}
	}
	if a, ok := arithmetic[n.Op]; ok && !s.isText(n) {
		if m := s.mutant(n, n.OpPos, n.Op, a.other); !constant {
			s.call(a.call, n, m)
		}
	}
}

// shifted tells whether x adds up or compares a shift whose type comes from around
// it, which a call would not give it.
func (s *source) shifted(x ast.Expr) bool {
	b, ok := ast.Unparen(x).(*ast.BinaryExpr)
	if !ok || s.info.Types[b].Value != nil {
		return false
	}
	if b.Op == token.SHL || b.Op == token.SHR {
		return s.info.Types[b.X].Value != nil
	}
	return s.shifted(b.X) || s.shifted(b.Y)
}

// generic tells whether the type of x is a parameter, which a call may not take.
func (s *source) generic(x ast.Expr) bool {
	_, ok := s.info.TypeOf(x).(*types.TypeParam)
	return ok
}

func (s *source) isText(x ast.Expr) bool {
	basic, ok := s.info.TypeOf(x).Underlying().(*types.Basic)
	return ok && basic.Info()&types.IsString != 0
}

// call makes a call of an operator.
func (s *source) call(name string, n *ast.BinaryExpr, all ...*mutant) {
	for _, m := range all {
		s.number(m)
		m.reached = all[0].id
	}
	at := s.offset(n.OpPos)
	s.insert(n.Pos(), fmt.Sprintf("%s(%d, ", name, all[0].id))
	s.replace(at, len(n.Op.String()), ",")
	s.closing(n.End())
}

func (s *source) unary(n *ast.UnaryExpr) {
	if n.Op != token.SUB {
		return
	}
	m := s.mutant(n, n.OpPos, n.Op, "+")
	if s.info.Types[n].Value != nil {
		return
	}
	s.number(m)
	at := s.offset(n.OpPos)
	s.replace(at, 1, fmt.Sprintf("mutantNegative(%d, ", m.id))
	s.closing(n.End())
}

func (s *source) step(n *ast.IncDecStmt) {
	to := step[n.Tok]
	m := s.mutant(n, n.TokPos, n.Tok, to.other)
	if index, ok := n.X.(*ast.IndexExpr); ok {
		if _, ok := s.info.TypeOf(index.X).Underlying().(*types.Map); ok {
			return // it has no address
		}
	}
	s.number(m)
	at := s.offset(n.TokPos)
	s.insert(n.Pos(), fmt.Sprintf("%s(%d, &", to.call, m.id))
	s.replace(at, len(n.Tok.String()), ")")
}

// figures finds the numbers of a constant's declaration.
func (s *source) figures(n *ast.ValueSpec) {
	for _, v := range n.Values {
		ast.Inspect(v, func(n ast.Node) bool {
			lit, ok := n.(*ast.BasicLit)
			if ok && (lit.Kind == token.INT || lit.Kind == token.FLOAT) {
				s.figure(v, lit)
			}
			return true
		})
	}
}

func (s *source) figure(all ast.Expr, lit *ast.BasicLit) {
	to := ""
	if n, err := strconv.ParseInt(lit.Value, 0, 64); err == nil {
		to = strconv.FormatInt(n+1, 10)
	} else if x, err := strconv.ParseFloat(lit.Value, 64); err == nil {
		to = strconv.FormatFloat(x*1.1, 'g', -1, 64)
	} else {
		return
	}
	at := s.offset(lit.Pos())
	s.add(&mutant{start: at, end: at + len(lit.Value), with: to}, lit.Pos(), all)
}

// mutant is op at a place in n replaced by another.
func (s *source) mutant(n ast.Node, at token.Pos, op token.Token, other string) *mutant {
	start := s.offset(at)
	m := &mutant{start: start, end: start + len(op.String()), with: other}
	s.add(m, at, n)
	return m
}

// add completes a mutant, all being the source that it stands in.
func (s *source) add(m *mutant, at token.Pos, all ast.Node) {
	from, to := s.offset(all.Pos()), s.offset(all.End())
	m.pkg, m.file, m.in, m.line = s.pkg, s.file, s.in, s.fset.Position(at).Line
	m.from = oneLine(s.text[from:to])
	m.to = oneLine([]byte(string(s.text[from:m.start]) + m.with + string(s.text[m.end:to])))
	key := m.name()
	m.nth = s.same[key]
	s.same[key]++
	s.found = append(s.found, m)
}

// number gives a mutant that is compiled in its id.
func (s *source) number(m *mutant) {
	*s.next++
	m.id, m.reached = *s.next, *s.next
}

func (s *source) insert(at token.Pos, text string) { s.replace(s.offset(at), 0, text) }

func (s *source) replace(at, length int, with string) {
	s.edits = append(s.edits, edit{start: at, end: at + length, with: with})
}

func (s *source) closing(at token.Pos) {
	i := s.offset(at)
	s.edits = append(s.edits, edit{start: i, end: i, with: ")", closes: true})
}

// changed is the text with its edits.
func (s *source) changed() []byte {
	var closing, others []edit
	for _, e := range s.edits {
		if e.closes {
			closing = append(closing, e)
		} else {
			others = append(others, e)
		}
	}
	slices.Reverse(closing)
	all := append(closing, others...)
	slices.SortStableFunc(all, func(a, b edit) int { return a.start - b.start })
	var out []byte
	at := 0
	for _, e := range all {
		out = append(append(out, s.text[at:e.start]...), e.with...)
		at = e.end
	}
	return append(out, s.text[at:]...)
}

func (s *source) offset(p token.Pos) int { return s.fset.Position(p).Offset }

func oneLine(text []byte) string { return strings.Join(strings.Fields(string(text)), " ") }
