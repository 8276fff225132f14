package picture

import _ "embed"

// Style is a plain style sheet for a drawing that stands alone: ink lines and
// flat regions.
//
//go:embed style.css
var Style string
