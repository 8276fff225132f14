package picture

// Style is a plain style sheet for a drawing on its own: ink lines and flat
// regions. It is a constant because package embed would bring io/fs, time and
// syscall with it, 29 kB of the browser's download.
const Style = `svg { font: 14px system-ui, sans-serif; background: #fff }
rect, line, path { fill: none; stroke: #2b2b26; stroke-width: 1.2; stroke-linejoin: round; stroke-linecap: round }
text { fill: #1c1c18 }
.figure { font-weight: 600 }
.soil { fill: #d9c3a0 }
.firm { fill: #eadfca; stroke: none }
.backfill { fill: #d9c3a0 }
.layer { fill: #b98d5a }
.mulch { fill: #c9a274 }
.mix { fill: #cbb08a }
.ball { fill: #e8e2b8 }
.guess { stroke-dasharray: 4 3 }
.pot { stroke-width: 2.4 }
.fill-line { stroke-width: 1.6 }
.grade { stroke-width: 2 }
.sheet { stroke-width: 4; stroke: #8a6d3b; stroke-linecap: butt }
.leaf { fill: #a9c48a }
.stem { stroke-width: 3 }
.leader { stroke-width: .7; stroke: #555 }
.dimension { stroke-width: 1 }
.soil-grain, .mix-grain, .layer-grain, .mulch-grain { stroke: #6a5230; stroke-width: .8 }
.mix-grain { stroke-width: 2 }
.heap { fill: #c9a274 }
.bag { fill: #eee3cd }
.bale { fill: #dfe6cf }
.bucket { fill: #d9dde0 }
.bar { stroke-width: .8 }
.mass, .room { fill: #9fb0b8 }
.wet { fill: #dbe3e7 }
.hatch { stroke-width: .8 }
.limit { stroke-width: 3 }
.grid { stroke: #ccc; stroke-width: .8 }
.axis, .tick { stroke-width: 1 }
.bags { stroke-width: 2; stroke-dasharray: 6 4 }
.bulk { stroke-width: 2.4 }
.need { stroke-width: 1.6; stroke-dasharray: 2 3 }
.crossing { stroke-width: 1 }
.cheaper { stroke-width: 5; stroke-linecap: butt }
`
