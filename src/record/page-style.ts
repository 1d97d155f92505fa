/** Colours of the page. Each text colour stands at least 4.5 to 1 against its ground (WCAG 2.2, success criterion 1.4.3). */
export const LIGHT = {
  ground: '#fbfaf6',
  panel: '#f1eee5',
  ink: '#24221e',
  quiet: '#5b564c',
  accent: '#86380f',
  rule: '#cbc4b5',
} as const;

export const DARK = {
  ground: '#1c1b18',
  panel: '#282622',
  ink: '#ece8de',
  quiet: '#b9b2a4',
  accent: '#f2ab7c',
  rule: '#4d4942',
} as const;

type Palette = { readonly [name in keyof typeof LIGHT]: string };

function variables(palette: Palette): string {
  return Object.entries(palette)
    .map(([name, colour]) => `--${name}:${colour}`)
    .join(';');
}

/** The whole style sheet of the page: light, dark and print. No fonts or images from elsewhere. */
export const PAGE_STYLE = `
:root{color-scheme:light dark;${variables(LIGHT)}}
@media (prefers-color-scheme:dark){:root{${variables(DARK)}}}
*{box-sizing:border-box}
body{margin:0;background:var(--ground);color:var(--ink);font:1rem/1.55 Georgia,"Times New Roman",serif;overflow-wrap:anywhere}
main,header,footer,nav{max-width:60rem;margin:0 auto;padding:0 1.25rem}
header{padding-top:2rem;border-bottom:3px double var(--rule)}
h1{font-size:1.9rem;line-height:1.2;margin:0 0 1rem}
h1 .what{display:block;font-size:1rem;font-weight:normal;color:var(--quiet)}
h2{font-size:1.35rem;margin:2.5rem 0 .75rem;padding-top:.75rem;border-top:1px solid var(--rule)}
h3{font-size:1.08rem;margin:1.5rem 0 .5rem}
h1,h2,h3,strong,th,dt{color:var(--ink)}
p{margin:.6rem 0}
.strong{font-weight:bold}
.notice{border-left:4px solid var(--accent);padding:.4rem 0 .4rem .9rem;margin:1rem 0 1.5rem;font-weight:bold}
nav ul{columns:3 14rem;padding-left:1.1rem;margin:1rem 0}
a{color:var(--accent)}
dl{display:grid;grid-template-columns:minmax(9rem,15rem) 1fr;gap:.2rem 1.2rem;margin:.8rem 0}
dt{color:var(--quiet)}
dd{margin:0}
li{margin:.3rem 0}
.aside{color:var(--quiet);font-size:.88em}
.wide{overflow-x:auto;margin:1rem 0}
table{border-collapse:collapse;min-width:min(100%,24rem);max-width:100%;font-size:.93rem;overflow-wrap:normal}
caption{text-align:left;color:var(--quiet);padding:.3rem 0;font-style:italic}
th,td{text-align:left;vertical-align:top;padding:.35rem .6rem;border-bottom:1px solid var(--rule)}
td{overflow-wrap:break-word;min-width:3rem}
thead th{background:var(--panel);border-bottom:2px solid var(--rule)}
tbody th{font-weight:normal;overflow-wrap:break-word;min-width:3rem}
.number-cell{text-align:right;font-variant-numeric:tabular-nums}
figure{margin:1rem 0}
svg.wall{display:block;width:100%;max-width:40rem;height:auto;margin:0 auto;color:var(--ink);font:13px Georgia,"Times New Roman",serif}
svg.wall text{fill:currentColor}
svg.wall .side{font-style:italic}
svg.wall .layer{stroke:currentColor;stroke-width:1}
svg.wall .sheet{fill:none;stroke:var(--accent);stroke-width:3;stroke-dasharray:9 3}
svg.wall .leader,svg.wall .dimension{fill:none;stroke:currentColor;stroke-width:.8}
svg.wall .key{fill:var(--ground);stroke:currentColor;stroke-width:1.2}
svg.wall .number{font-weight:bold}
svg.chart{display:block;width:100%;max-width:40rem;height:auto;margin:0 auto;color:var(--ink);font:12px Georgia,"Times New Roman",serif}
svg.chart text{fill:currentColor}
svg.chart .side{font-style:italic}
svg.chart .number{font-weight:bold}
svg.chart .grid{fill:none;stroke:var(--rule);stroke-width:1}
svg.chart .boundary{fill:none;stroke:currentColor;stroke-width:.6;opacity:.5}
svg.chart .temperature{fill:none;stroke:currentColor;stroke-width:2.4}
svg.chart .stud{fill:none;stroke:currentColor;stroke-width:1.4;stroke-dasharray:10 5}
svg.chart .dew-point{fill:none;stroke:var(--accent);stroke-width:2.4;stroke-dasharray:2 4}
svg.chart .meeting{fill:none;stroke:var(--accent);stroke-width:2}
svg.chart .bar{fill:var(--accent);stroke:currentColor;stroke-width:.8}
svg .pattern{fill:none;stroke:currentColor;stroke-width:.7;opacity:.65}
svg.wall .pattern circle,svg.detail .pattern circle{fill:currentColor;stroke:none}
svg.detail,svg.elevation{display:block;width:100%;height:auto;margin:0 auto;color:var(--ink);font:12.5px Georgia,"Times New Roman",serif}
svg.elevation{max-width:44rem}
svg.detail text,svg.elevation text{fill:currentColor}
svg .number{font-weight:bold}
svg.detail .layer{stroke:currentColor;stroke-width:.8}
svg.detail .wood,svg.detail .frame,svg.detail .block{fill:var(--panel);stroke:currentColor;stroke-width:1.2}
svg.detail .buck{fill:var(--panel);stroke:currentColor;stroke-width:2}
svg.detail .thin{fill:none;stroke:currentColor;stroke-width:.6}
svg.detail .glass{fill:none;stroke:currentColor;stroke-width:2}
svg.detail .flange{fill:none;stroke:currentColor;stroke-width:3}
svg.detail .steel{fill:none;stroke:currentColor;stroke-width:4}
svg.detail .barrier{fill:none;stroke:var(--accent);stroke-width:2;stroke-dasharray:7 3}
svg.detail .skin{fill:none;stroke:var(--accent);stroke-width:3}
svg.detail .pan{fill:none;stroke:var(--accent);stroke-width:2;stroke-dasharray:1 0}
svg.detail .bead{fill:none;stroke:currentColor;stroke-width:2.4}
svg.detail .seal{fill:var(--accent);stroke:currentColor;stroke-width:.6}
svg.detail .rod{fill:var(--ground);stroke:currentColor;stroke-width:1}
svg.detail .leader,svg.detail .dimension,svg.elevation .dimension{fill:none;stroke:currentColor;stroke-width:.8}
svg.detail .spot{fill:currentColor}
svg.detail .key{fill:var(--ground);stroke:currentColor;stroke-width:1.2}
svg.elevation .zone{fill:var(--panel)}
svg.elevation .zone-end{fill:none;stroke:var(--accent);stroke-width:1.6;stroke-dasharray:12 3 2 3}
svg.elevation .board{fill:none;stroke:currentColor;stroke-width:1}
svg.elevation .stud{fill:none;stroke:currentColor;stroke-width:.7;stroke-dasharray:6 4}
svg.elevation .dot{fill:var(--accent);stroke:none}
svg.elevation .ring{fill:var(--ground);stroke:currentColor;stroke-width:1.2}
svg.elevation .cross{fill:none;stroke:currentColor;stroke-width:1.2}
.details{display:grid;grid-template-columns:repeat(auto-fit,minmax(15rem,1fr));gap:1rem}
.details figure{margin:0}
details{margin:1rem 0}
summary{cursor:pointer;color:var(--accent)}
.appendix>summary{font-size:1.35rem;margin-top:2.5rem}
.on-paper{display:none}
.hold{font-weight:bold}
.signatures{width:100%}
.signatures td{height:3.2rem;border-bottom:1px solid var(--ink)}
footer{padding-bottom:3rem}
@media (max-width:40rem){dl{grid-template-columns:1fr}dd{margin-bottom:.5rem}}
@media print{
@page{margin:10mm 12mm}
:root{${variables(LIGHT)};--ground:#fff;--panel:#f3f0e8}
body{font-size:7.6pt;line-height:1.2}
main,header,footer{max-width:none;padding:0}
header{padding-top:0}
nav,details{display:none}
.on-paper{display:block;font-style:italic}
main section:first-child h2{border-top:0}
h1{font-size:15pt;margin-bottom:.4rem}h1 .what{font-size:8.5pt}
h2{font-size:11pt;margin:.55rem 0 .25rem;padding-top:.25rem}h3{font-size:9pt;margin:.4rem 0 .15rem}
p,dl,.wide,figure{margin:.25rem 0}ul,ol{margin:.2rem 0;padding-left:1rem}li{margin:.05rem 0}
.notice{margin:.4rem 0}
dl{grid-template-columns:auto 1fr;gap:0 .7rem}
.aside{font-size:.9em}
th,td{padding:.08rem .35rem}
h2,h3,caption{break-after:avoid}
tr,li,dl,figure,.notice,.signatures{break-inside:avoid}
thead{display:table-header-group}
table{font-size:7pt;width:100%}
caption{padding:.1rem 0}
td,tbody th{min-width:1.6rem}
.wide{overflow:visible}
#situation dl,#cautions,#profile,#decision ul,#changes ul{columns:2;column-gap:1.4rem}
#situation dl{display:block}
#situation dt{float:left;clear:left;margin-right:.4rem}
#situation dt::after{content:":"}
#cautions h2,#profile h2{column-span:all}
#cautions h3{margin-top:.25rem}
svg.wall{max-width:8.6cm}svg.chart{max-width:8.6cm}svg.elevation{max-width:11.5cm}
#condensate{break-inside:avoid}
#condensate figure{float:left;width:8.6cm;margin-right:1rem}
#condensate+section{clear:left}
#cautions{font-size:7.1pt;line-height:1.17}
#cautions .aside{display:none}
#layers{display:grid;grid-template-columns:8.6cm 1fr;column-gap:.8rem;align-items:start}
#layers :is(th,td):nth-child(3){display:none}
#profile{break-inside:avoid}#profile svg.chart{max-width:6.8cm}#profile h3{font-size:8pt}
#excluded :is(th,td){width:34%}#excluded td+td{width:24%}#excluded th+th:not(:last-child),#excluded th+td{width:42%}
#excluded table{table-layout:fixed}
#layers h2,#layers p{grid-column:1/-1}
thead,tbody tr:first-child{break-before:avoid}
.details{grid-template-columns:repeat(3,1fr);gap:.3rem;max-width:15.5cm;margin:0 auto}
#openings .details + .wide table{font-size:7pt}
#openings .details + .wide tbody{display:grid;grid-template-columns:repeat(4,1fr)}
#openings .details + .wide thead{display:none}
.signatures td,.signatures th{vertical-align:bottom}
.signatures td{height:1.5rem}
.signatures td:nth-child(3),.signatures td:nth-child(4){min-width:3.6cm}
.signatures td:nth-child(5){min-width:2cm}
.signatures .duty{vertical-align:top;border-bottom-width:0}
.build-sheet{font-size:7.4pt;line-height:1.17}
.build-sheet h1{font-size:13pt}
.build-sheet h2{font-size:9.5pt;margin:.35rem 0 .15rem;padding-top:.15rem}
.build-sheet h3{font-size:8pt;margin:.2rem 0 .1rem}
.build-sheet header dl{columns:2}
.build-sheet .notice{margin:.2rem 0}
.build-sheet table{font-size:6.8pt}
.build-sheet :is(th,td){padding:.04rem .3rem}
.build-sheet #fasteners :is(th,td):nth-child(2){width:32%}
.build-sheet #sequence{columns:2;column-gap:1.2rem}
.build-sheet #site{columns:3;column-gap:1rem}
.build-sheet #sequence h2,.build-sheet #site h2{column-span:all}
}
`.trim();
