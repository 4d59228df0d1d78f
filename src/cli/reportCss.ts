/** Styles of the page that `yardhark report --html` writes: black on white, A4 and Letter alike. */
export const REPORT_CSS = `
@page { margin: 11mm 14mm }
:root { color-scheme: light; --ink: #000; --soft: #333; --hair: #ccc }
body { margin: 0 auto; max-width: 48rem; padding: 1rem; background: #fff; color: var(--ink); font: 16px/1.45 system-ui, sans-serif }
h1 { font-size: 1.6em; line-height: 1.2; margin: 0 0 .6em }
h2 { font-size: 1.15em; margin: 1em 0 .4em; padding-bottom: .2em; border-bottom: 2px solid }
ul { margin: 0; padding: 0; list-style: none }
li { margin: 0 0 .3em }
li p { margin: 0 0 .2em }
.group p:first-child { font-weight: 600 }
.note { color: var(--soft); font-size: .9em; margin: .3em 0 }
.rule { height: 2.5rem; border-bottom: 1px solid }
article + article { margin-top: 3rem }
img { display: block; max-width: 100%; max-height: 22rem; margin-top: .3em }
table { border-collapse: collapse; margin: .6em 0; font-variant-numeric: tabular-nums }
caption { text-align: left; font-weight: 600; padding: .2em 0 }
th, td { text-align: left; vertical-align: top; padding: .2em .6em .2em 0; border-bottom: 1px solid var(--hair); overflow-wrap: anywhere }
th { font-weight: 600; overflow-wrap: normal }
.number { text-align: right; white-space: nowrap }
svg { display: block; width: 100%; margin-top: .3em }
svg.curve { max-width: 26rem }
svg.sketch { max-width: 44rem }
svg text { font: 15px system-ui, sans-serif }
svg.spectrum text { font-size: 13px }
svg path { fill: none; stroke: #000; stroke-width: 1.5 }
div.spectra { display: grid; grid-template-columns: repeat(auto-fill, minmax(11rem, 1fr)); gap: .5rem }
svg .look-rule { stroke: #ccc; stroke-width: 1 }
svg .look-asked { stroke-dasharray: 6 5 }
svg .look-band { fill: #ddd; stroke: none }
svg .look-fit { stroke-width: 1 }
svg .look-reading { stroke-width: 3 }
svg .look-on { stroke-width: 2 }
svg .look-off { stroke-dasharray: 4 3 }
svg .look-pipe { stroke-width: 5 }
svg .look-bore { stroke: #fff; stroke-width: 2 }
svg .look-ground { fill: #f1f1f1; stroke: #ddd; stroke-width: 1 }
svg .look-likelihood { fill: #9a9a9a; stroke: none }
svg .look-window { stroke-width: 2; stroke-dasharray: 2 3; fill: none }
svg .look-decision { stroke-width: 3 }
svg .look-faint { stroke: #777; stroke-dasharray: 5 6 }
svg .look-mark { fill: #fff; stroke-width: 2 }
svg .look-fill { fill: #000 }
svg .look-peg { fill: #fff; stroke-width: 1.5 }
svg .look-peg-best { fill: #000 }
svg text.light { fill: #fff }
@media print {
  body { max-width: none; padding: 0; font-size: 10pt; line-height: 1.3 }
  h1, h2, caption { break-after: avoid }
  li, svg, tr, .ask { break-inside: avoid }
  .cautions { break-after: avoid }
  .note { break-before: avoid }
  thead { display: table-header-group }
  .heard::after { display: block; clear: both; content: '' }
  .heard svg.sketch { float: left; width: 56% }
  .heard svg.sketch:last-child { float: none; width: 75% }
  .heard table { float: right; width: 37%; font-size: 8.5pt }
  img { float: right; max-width: 60mm; max-height: 38mm; margin-left: 4mm }
  div.spectra { grid-template-columns: repeat(4, 1fr) }
  .tested ul { display: grid; grid-template-columns: repeat(3, minmax(0, 1fr)); gap: 2mm 6mm; font-size: 8.5pt }
  .tested li:not(.group) { grid-column: 1 / -1 }
  .cautions ul { columns: 3; column-gap: 5mm; font-size: 8pt; line-height: 1.25 }
  .asked ul { columns: 2; column-gap: 8mm }
  .cautions { clear: both }
  h2 { overflow: hidden }
  .rule { height: 1.5rem }
  article + article { break-before: page; margin: 0 }
  .sweep table, .line table { font-size: 8pt }
}
`
