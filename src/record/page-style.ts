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
svg.wall .pattern{fill:none;stroke:currentColor;stroke-width:.7;opacity:.65}
.signatures{width:100%}
.signatures td{height:3.2rem;border-bottom:1px solid var(--ink)}
footer{padding-bottom:3rem}
@media (max-width:40rem){dl{grid-template-columns:1fr}dd{margin-bottom:.5rem}}
@media print{
@page{margin:16mm 15mm}
:root{${variables(LIGHT)};--ground:#fff;--panel:#fff}
body{font-size:9pt;line-height:1.3}
main,header,footer{max-width:none;padding:0}
nav{display:none}
main section:first-child h2{border-top:0}
h1{font-size:17pt}h2{font-size:12.5pt;margin:.9rem 0 .4rem;padding-top:.4rem}h3{font-size:10pt;margin:.7rem 0 .3rem}
p,dl,.wide,figure{margin:.4rem 0}li{margin:.1rem 0}dl{gap:.05rem 1rem}
th,td{padding:.15rem .5rem}
h2,h3,caption{break-after:avoid}
tr,li,figure,.notice,.signatures{break-inside:avoid}
thead{display:table-header-group}
table{font-size:8.5pt}
#trace table,#packs table{font-size:7.5pt}
.wide{overflow:visible}
svg.wall,svg.chart{max-width:13cm}
}
`.trim();
