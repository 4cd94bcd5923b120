import{h as r,Component as o,render as t}from"../preact/preact.js";export{h,render,Component}from"../preact/preact.js";import e from"./htm.js";var m=e.bind(r);export{m as html};
