#pragma once

// How the job sheet looks: one column on a phone, a drawing with its figures beside it on paper.
// Black on white; verdicts are told by shape and word, and nothing is painted as a background,
// which browsers leave out of print.

#include <string_view>

namespace thole {

inline constexpr std::string_view kSheetStyle = R"(
@page{margin:9mm}
body:has(>.sheet){margin:0;background:#fff}
.sheet{--ink:#111;--muted:#444;--line:#777;--faint:#bbb;--accent:#0a5a78;--water:#dcebf1;
--hull:#ece6d8;--paper:#fff;--fails:#9b1c1c;--good:#145a37;--close:#734500;--bad:#9b1c1c;
--unknown:#4d535a;color-scheme:light;box-sizing:border-box;max-width:52em;margin:0 auto;
padding:1.25em 1em 3em;background:#fff;color:var(--ink);
font:16px/1.45 Inter,system-ui,sans-serif;overflow-wrap:break-word}
.sheet *{box-sizing:border-box}
.sheet h1,.sheet h2,.sheet h3,.sheet p,.sheet ul,.sheet dl,.sheet dd,.sheet figure{margin:0}
.sheet h1{font-size:1.75em;line-height:1.15}
.sheet h2{font-size:1.3em;line-height:1.2;padding-top:1.6em;break-after:avoid}
.sheet h2+p{break-after:avoid}
.sheet h3{font-size:1em;padding-top:1em;break-after:avoid}
.sheet .small,.sheet .from,.sheet .ref,.sheet figcaption{font-size:.84em;color:var(--muted)}
.sheet .ref{white-space:nowrap}
.sheet .good{color:var(--good)}.sheet .close{color:var(--close)}
.sheet .bad{color:var(--bad)}.sheet .unknown{color:var(--unknown)}
.sheet .title{display:grid;grid-template-columns:1fr auto;gap:0 1em;border:2px solid var(--ink)}
.sheet .name{padding:.75em 1em;align-self:center}
.sheet .kind{font-size:.84em;letter-spacing:.08em;text-transform:uppercase;color:var(--muted)}
.sheet .code{padding:.35em .35em 0 0;text-align:center}
.sheet .qr{display:block;width:36mm;height:36mm}
.sheet .block{grid-column:1/-1;display:grid;grid-template-columns:repeat(4,1fr);
border-top:2px solid var(--ink)}
.sheet .block div{padding:.3em 1em;border-left:1px solid var(--line)}
.sheet .block div:first-child{border-left:0}
.sheet .block dt,.sheet .heads dt{font-size:.84em;color:var(--muted)}
.sheet .block dd{min-height:1.45em;font-weight:600}
.sheet .verdict{display:grid;grid-template-columns:auto 1fr;gap:.2em .8em;margin-top:1.25em}
.sheet .verdict .sign .mark{width:3em;height:3em}
.sheet .answer{font-size:1.6em;line-height:1.2;font-weight:600}
.sheet .verdict ul{padding-left:1.2em}
.sheet .heads{display:grid;grid-template-columns:repeat(4,1fr);gap:0 1em;margin-top:1em;
border-top:1px solid var(--line)}
.sheet .heads div{display:flex;flex-direction:column-reverse;justify-content:flex-end;
padding:.5em 0;border-bottom:1px solid var(--line)}
.sheet .heads dd{font-size:1.35em;line-height:1.25;font-weight:600}
.sheet table{width:100%;border-collapse:collapse}
.sheet th,.sheet td{padding:.22em .6em .22em 0;text-align:left;vertical-align:baseline;
border-bottom:1px solid var(--faint)}
.sheet th:last-child,.sheet td:last-child{padding-right:0}
.sheet th{font-weight:600}
.sheet thead th{font-size:.84em;color:var(--muted);border-bottom:1px solid var(--ink)}
.sheet tbody th{font-weight:400}
.sheet .n{text-align:right;font-variant-numeric:tabular-nums}
.sheet .worksheet{break-inside:avoid}
.sheet .worksheet td{height:2.2em;min-width:4em;border:1px solid var(--line);padding:.22em .4em}
.sheet .sum th,.sheet .sum td{border-bottom:0;font-weight:600}
.sheet .sum:last-child th,.sheet .sum:last-child td{border-top:2px solid var(--ink)}
.sheet tr,.sheet .checks tbody,.sheet figure,.sheet .values div,.sheet li{break-inside:avoid}
.sheet .checks .held td,.sheet .checks .held th{border-bottom:0}
.sheet .checks td:first-child{white-space:nowrap}
.sheet .mark{width:1.15em;height:1.15em;vertical-align:-.2em;fill:currentColor}
.sheet .mark .in{fill:none;stroke:#fff;stroke-width:2.8}
.sheet .mark .out{fill:none;stroke:currentColor;stroke-width:2.4}
.sheet .bar{width:90px;height:12px;vertical-align:-.05em;fill:currentColor}
.sheet .use{white-space:nowrap;font-variant-numeric:tabular-nums}
.sheet .use span{display:inline-block;width:3.4em;text-align:right}
.sheet .bar .rail{fill:none;stroke:var(--faint)}
.sheet .bar .limit{fill:none;stroke:var(--ink);stroke-width:1.5}
.sheet .bar .in{fill:none;stroke:#fff;stroke-width:2}
.sheet .beside{display:grid;grid-template-columns:1fr 1fr;gap:1.25em;align-items:start;
margin-top:.6em}
.sheet .drawing{display:block;width:100%;height:auto;border:1px solid var(--line)}
.sheet .drawing text{font-family:inherit}
.sheet figcaption{padding-top:.3em}
.sheet .values{columns:2;column-gap:1.25em}
.sheet .values div{display:flex;gap:.6em;padding:.15em 0;border-bottom:1px solid var(--faint)}
.sheet .values dt{flex:1}
.sheet .values dd{text-align:right}
.sheet .values b{font-weight:600}
.sheet .notes,.sheet .sources{columns:2;column-gap:1.5em;padding:0;list-style:none;font-size:.84em}
.sheet .notes li{padding-left:1em;text-indent:-1em}
.sheet .notes li::before{content:"\00b7";display:inline-block;width:1em;text-indent:0}
.sheet .sources{margin-top:.5em}
.sheet .sources .ref{font-size:1em}
.sheet .sources li{display:grid;grid-template-columns:2.4em 1fr}
.sheet .cautions{list-style:none;padding:.6em .8em;margin-top:1em;border:2px solid var(--ink)}
.sheet .cautions li{display:grid;grid-template-columns:1.6em 1fr;padding:.15em 0}
.sheet .hand{display:grid;grid-template-columns:repeat(3,1fr);gap:1em;margin-top:3em;
break-inside:avoid}
.sheet .hand p{border-top:1px solid var(--ink);padding-top:.2em;font-size:.84em}
.sheet .address{margin-top:1em;word-break:break-all}
.sheet a{color:inherit}
@media (max-width:40em){
.sheet .beside,.sheet .title{grid-template-columns:1fr}
.sheet .code{padding:0 1em .5em;text-align:left}
.sheet .block{grid-template-columns:1fr 1fr}
.sheet .block div:nth-child(3){border-left:0}
.sheet .heads{grid-template-columns:1fr 1fr}
.sheet .values,.sheet .notes,.sheet .sources{columns:1}
.sheet .bar{width:60px;height:8px}
.sheet .checks .ref,.sheet .wide{display:none}
.sheet .checks td:first-child{white-space:normal}
}
@media (max-width:24em){
.sheet{padding:.75em .75em 2em;font-size:15px}
.sheet th,.sheet td{padding-right:.25em}
.sheet .worksheet td{min-width:2em;padding:.22em .2em}
.sheet .use span{display:block;text-align:left}
.sheet .values div{display:block}
.sheet .values dd{text-align:left}
}
@media print{
.sheet{max-width:none;padding:0;font-size:8.5pt;line-height:1.23;--ink:#000;--muted:#222;--good:#000;
--close:#000;--bad:#000;--unknown:#000;--accent:#000;--fails:#000}
.sheet .beside,.sheet .title{grid-template-columns:1fr 1fr}
.sheet .title{grid-template-columns:1fr auto}
.sheet .cautions,.sheet .notes{columns:2;column-gap:1.5em}
.sheet .cautions li,.sheet .notes li{break-inside:avoid}
.sheet .sources{columns:3}
.sheet .drawing{max-height:45mm}
.sheet th,.sheet td{padding-top:.08em;padding-bottom:.08em}
.sheet .values div{padding:.04em 0}
.sheet h2{padding-top:.9em}
.sheet h3{padding-top:.6em}
.sheet .cautions{padding:.3em .6em;margin-top:.4em}
}
)";

}  // namespace thole
