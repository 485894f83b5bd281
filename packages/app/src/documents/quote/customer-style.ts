import { FONTS, PALETTES } from '@spraywright/engine/drawings';

const { ink, ink2, rule, liquid, broken, thin } = PALETTES.print;

/** The customer's sheet: white, ruled, one column, everything to be touched 44 px high. */
export const CUSTOMER_STYLE = `
html{color:${ink};background:#fff;font:460 17px/1.35 '${FONTS.semi}','${FONTS.signs}','Arial Narrow',sans-serif;font-variant-numeric:tabular-nums lining-nums;text-rendering:geometricPrecision;-webkit-text-size-adjust:100%}
body{margin:0 auto;max-width:42rem;padding:12px 16px 64px}
.shop{font-weight:640;margin:0;padding-bottom:10px;border-bottom:1.8px solid ${ink}}
h1{font-size:25px;line-height:1.2;font-weight:640;margin:16px 0 6px}
h2{font:640 14px/1.3 '${FONTS.condensed}',sans-serif;letter-spacing:.045em;text-transform:uppercase;margin:24px 0 6px;padding-top:10px;border-top:.9px solid ${rule}}
h2.option{font:640 21px/1.2 '${FONTS.semi}',sans-serif;letter-spacing:0;text-transform:none;border-top:1.8px solid ${ink};margin-top:36px}
p{margin:6px 0}small{display:block;color:${ink2};font-size:14px;line-height:1.25}
.note{border-left:1.8px solid ${ink};padding-left:10px}
.standing,.refused{border:1.8px solid ${ink};padding:10px 12px;font-weight:640}.refused{border-color:${broken};color:${broken}}
a.way{display:flex;align-items:center;min-height:44px;color:${liquid}}
figure{margin:12px 0 0}figure svg{width:100%;height:auto;display:block}
.rows{list-style:none;margin:0;padding:0}.rows li{display:flex;gap:12px;justify-content:space-between;padding:8px 0;border-bottom:.8px solid ${rule};overflow-wrap:anywhere}
.figures{flex:none;text-align:right;font-family:'${FONTS.condensed}','${FONTS.signs}',sans-serif}
.state{font-family:'${FONTS.condensed}',sans-serif;font-weight:640}.state.kept{color:${ink2}}.state.thin{color:${thin}}.state.broken{color:${broken}}
table{border-collapse:collapse;width:100%;font:500 16px/1.3 '${FONTS.condensed}','${FONTS.signs}',sans-serif}
th{font-weight:480;text-align:left;color:${ink2}}th,td{padding:7px 10px 7px 0;border-bottom:.8px solid ${rule};vertical-align:top}
.price td{text-align:right;padding-right:0;font-weight:640}.price .total th,.price .total td{color:${ink};font-size:20px;font-weight:660;border-top:1.8px solid ${ink};border-bottom:1.8px solid ${ink}}
.scroll{overflow-x:auto}.scroll td{min-width:6rem}
label,legend{display:block;margin:10px 0 4px;padding:0}fieldset{border:0;margin:0;padding:0}
input:not([type]),textarea{display:block;width:100%;box-sizing:border-box;min-height:44px;margin-top:4px;padding:8px 10px;font:inherit;color:inherit;background:#fff;border:1px solid ${ink};border-radius:0}
.choice{display:flex;align-items:center;gap:12px;min-height:44px;margin:0;border-bottom:.8px solid ${rule}}.choice input{width:22px;height:22px;margin:0;flex:none;accent-color:${ink}}
button{display:block;width:100%;min-height:48px;margin-top:14px;font:inherit;font-weight:640;color:${ink};background:#fff;border:1.8px solid ${ink};border-radius:0}
button.main{color:#fff;background:${ink}}
a:focus-visible,button:focus-visible,input:focus-visible,textarea:focus-visible,.scroll:focus-visible{outline:2.4px solid ${ink};outline-offset:2px}
@media print{form{display:none}}
`;
