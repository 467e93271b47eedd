import { readFileSync, writeFileSync } from 'node:fs';
import { createCanvas, Path2D } from '@napi-rs/canvas';
const root='/work/w16';
const form = await import(root + '/src/core/form/index.ts'); const st = await import(root + '/src/core/stencil/index.ts');
const { adversaries } = await import(root + '/test/adversaries.ts');
const { prepareVision, narrowPlaces } = await import('/work/w16/test/outside/stencil-widths.ts');
await form.prepareDrawings(readFileSync(root + '/node_modules/@resvg/resvg-wasm/index_bg.wasm')); await prepareVision();
const size=80; const out = process.argv[2]; const wants = process.argv.slice(3);
const px=+(process.env.PX??6), W=(size+20)*px, cols=Math.min(4,wants.length), rows=Math.ceil(wants.length/cols);
const c=createCanvas(W*cols,W*rows), g=c.getContext('2d'); g.fillStyle='#fff'; g.fillRect(0,0,W*cols,W*rows);
const aperture = { minX: 0, minY: 0, maxX: size + 20, maxY: size + 20 }, sheet = { minX: -20, minY: -20, maxX: size + 40, maxY: size + 40 };
wants.forEach((want,i)=>{
  const [n, side='window'] = want.split('@');
  const adv = /^(\d+):(\d+):(.*)$/.exec(n);
  const region = adv ? adversaries(+adv[1], +adv[2]).find((a:any)=>a.name===adv[3])!.region : form.toTrueSize(form.readSvg(readFileSync(n.startsWith('/')?n:'/work/debs/clip/usr/share/openclipart/svg/'+n,'utf8'),'x').region,{widthMm:size,heightMm:size});
  const shape = form.place(region, [{ xMm: size / 2 + 10, yMm: size / 2 + 10, angleDeg: 0, scale: 1, mirror: false }]);
  const t=performance.now();
  const made = st.makeStencil({ shape, side, aperture, sheet, material: st.defaultMaterials[3], islands: 'bridge' });
  const t1=performance.now();
  const w = st.writePaths(made.cutLines, made, st.defaultMaterials[3]);
  const nar = w.certificate.holds ? narrowPlaces(w.data, form.regionBox(made.cutLines), { paperMm: 1.5, openingMm: 1 }) : [];
  console.log(n, made.certificate.holds, w.certificate.holds, (t1-t)|0, made.bridges.length, made.problems.map((p:any)=>p.code).join(), JSON.stringify(made.certificate.faults.slice(0,3)), JSON.stringify(nar.slice(0,3)), JSON.stringify(w.certificate.faults.slice(0,2)));
  g.save(); g.translate((i%cols)*W, Math.floor(i/cols)*W); g.beginPath(); g.rect(0,0,W,W); g.clip(); g.scale(px,px); if(process.env.CXX) g.translate(-(+process.env.CX),-(+process.env.CY!));
  const path=(r:any)=>{const p=new Path2D(); for(const q of r.rings){p.moveTo(q[0],q[1]); for(let k=2;k<q.length;k+=2)p.lineTo(q[k],q[k+1]); p.closePath();} return p;};
  g.fillStyle='#f3b0a0'; g.fill(path(shape),'evenodd'); g.fillStyle='rgba(40,60,90,0.75)'; g.fill(new Path2D(w.data),'evenodd');
  g.strokeStyle='#0a0'; g.lineWidth=0.15; for(const b of made.bridges) g.stroke(path(b.region));
  g.strokeStyle='#f0f'; g.lineWidth=0.3; for(const f of [...made.certificate.faults,...w.certificate.faults]){g.beginPath();g.arc(f.atMm[0],f.atMm[1],1.5,0,7);g.stroke();}
  g.strokeStyle='#f00'; for(const f of nar){g.beginPath();g.arc(f.atMm[0],f.atMm[1],2.2,0,7);g.stroke();}
  g.restore();
});
writeFileSync(out,c.toBuffer('image/png'));
