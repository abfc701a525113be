// Advance widths of DejaVu Sans, in 1/2048 of its size and base 36, by ranges of code points; 0 where it has no sign.
// Taken from the font that the papers are set in; a test beside the writer of PDF compares the two.

export interface WidthRange {
  readonly from: number;
  readonly widths: string;
}

export const regularWidths: readonly WidthRange[] = [
  { from: 0x20, widths: 'i3 mt q6 1bo 107 1i2 18d fn m7 m7 sg 1bo i3 kj i3 j6 107 107 107 107 107 107 107 107 107 107 j6 j6 1bo 1bo 1bo u7 1kw 12x 131 13q 17t zy wq 183 16s gs gs 11b vp 1d3 16k 18s yb 18s 13j 104 yr 15n 12x 1k9 12z yr 12z m7 j6 m7 1bo sg sg yv 104 va 104 z0 k1 104 102 ft ft wy ft 1jf 102 yt 104 104 ne tn mb 102 xo 1aj xo xo tv 107 j6 107 1bo' },
  { from: 0xa0, widths: 'i3 mt 107 107 107 107 j6 sg sg 1kw qt yt 1bo kj 1kw sg sg 1bo mt mt sg 107 107 i3 sg mt qt yt 1j5 1j5 1j5 u7 12x 12x 12x 12x 12x 12x 1jf 13q zy zy zy zy gs gs gs gs 183 16k 18s 18s 18s 18s 18s 1bo 18s 15n 15n 15n 15n yr yf zu yv yv yv yv yv yv 1jv va z0 z0 z0 z0 ft ft ft ft yt 102 yt yt yt yt yt 1bo yt 102 102 102 102 xo 104 xo 12x yv 12x yv 12x yv 13q va 13q va 13q va 13q va 17t 104 183 104 zy z0 zy z0 zy z0 zy z0 zy z0 183 104 183 104 183 104 183 104 16s 102 1g4 13j gs ft gs ft gs ft gs ft gs ft xk vm gs ft 11b wy wy vp ft vp ft vp lc vp jg vz g6 16k 102 16k 102 16k 102 1aa 16k 102 18s yt 18s yt 18s yt 1ov 1m7 13j ne 13j ne 13j ne 104 tn 104 tn 104 tn 104 tn yr mb yr mb yr mb 15n 102 15n 102 15n 102 15n 102 15n 102 15n 102 1k9 1aj yr xo yr 12z tv 12z tv 12z tv k1' },
  { from: 0x391, widths: '12x 131 vp 12x zy 12z 16s 18s gs 11b 12x 1d3 16k zy 18s 16s yb 0 zy yr yr 18s 12z 18s 17h gs yr 11i ur 102 j9 wx 11i 10b xo yt ur uy 102 yt j9 xj xo 107 vs vq yt y9 104 xe 102 y9 wx 11j wv 11j 1bn' },
  { from: 0x400, widths: 'zy zy 18q yp 13q 104 gs gs gs 1q8 1ng 18q 14e 16k yo 16s 12x 131 131 yp 18g zy 1pa 10h 16k 16k 14e 16s 1d3 16s 18s 16s yb 13q yr yo 1cz 12z 186 130 1ou 1q8 1bd 1e7 131 13q 1pf 13j yv z3 xj tw 13c z0 1f9 u9 10z 10z yd 10d 16x 117 yt 117 104 va x5 xo 1cn xo 12q xm 1g2 1hl 147 18x xj v8 1bw y8 z0 z0 zk tw v8 tn ft ft ft 1fc 1f4 113 yd 10z xo 117' },
  { from: 0x2010, widths: 'kj kj 107 sg 1kw 1kw sg sg i3 i3 i3 i3 th th th th sg sg xk xk j1 11z 1kw i3' },
  { from: 0x2030, widths: '24c 2qq cx l9 tl cx l9 tl ja mr mr' },
  { from: 0x2070, widths: 'mt a6 0 0 mt mt mt mt mt mt u1 u1 u1 dz dz mo mt mt mt mt mt mt mt mt mt mt u1 u1 u1 dz dz' },
  { from: 0x20ac, widths: '107' },
  { from: 0x2150, widths: '1j5 1j5 25y 1j5 1j5 1j5 1j5 1j5 1j5 1j5 1j5 1j5 1j5 1j5 1j5' },
  { from: 0x2190, widths: '1bo 1bo 1bo 1bo 1bo 1bo' },
  { from: 0x2200, widths: '12x 107 tf zy zy 1dk 122 122 1dk 1dk 14u 1dk 1dk 14u 107 172 172 12c 1bo 1bo 1bo j6 108 1bo zm zm 109 109 109 14n 1be 1bo 1f0 1f0 1bo sg sg sg sg 15n 15n 15n 15n tn 18w 1o5 tn 18w 1o5 tn tn tn 107 107 et 107 1bo 1bo 1bo 1bo 1bo 1bo 1bo 1bo lc 1bo 1bo 1bo 1bo 1bo 1bo 1bo 1bo 1bo 1bo 1bo 1bo 1bo 1bo 1bo 1bo 1bo 1bq 1bq 1kw 1kw 1bo 1bo 1bo 1bo 1bo 1bo 1bo 1bo 1bo 1bo 1bo 1bo 1bo 1bo 1bo 1bo' },
  { from: 0x2300, widths: 'y9' },
  { from: 0x25a0, widths: '1hr 1hr 1hr 1hr 1hr 1hr 1hr 1hr 1hr 1hr 12k 12k 1hr 1hr vb vb 17r 17r 17r 17r sk sk 17r 17r sk sk 17r 17r 17r 17r sk sk 17r 17r sk sk 17r 17r 17r 17r 17r 1dn s4 1dn 1dn 1dn 1dn 1dn' },
  { from: 0x2610, widths: '1f0 1f0 1f0' },
  { from: 0x2713, widths: '1bo 1bo 1bo 1bo 1bo' },
];

export const boldWidths: readonly WidthRange[] = [
  { from: 0x20, widths: 'jt py tn 1bo 13l 1l0 1dm hf q0 q0 tr 1bo lm nm lm ks 13l 13l 13l 13l 13l 13l 13l 13l 13l 13l mr mr 1bo 1bo 1bo x0 1kw 181 17d 15r 1b8 12v 12v 1ap 1bm l6 l6 183 109 1km 1bm 1cd 15p 1cd 17t 14z 12t 1a7 181 1qr 17v 157 159 q0 ks q0 1bo sg sg 12e 14q xq 14q 12l or 14q 14i ji ji 11u ji 1na 14i 133 14q 14q s2 xv r7 14i 113 1gk 10p 113 x4 14i ks 14i 1bo' },
  { from: 0xa0, widths: 'jt py 13l 13l 107 13l ks sg sg 1kw w3 10r 1bo nm 1kw sg sg 1bo ox ox sg 15v 107 lm sg ox w3 10r 1mw 1mw 1mw x0 181 181 181 181 181 181 1pq 15r 12v 12v 12v 12v l6 l6 l6 l6 1bo 1bm 1cd 1cd 1cd 1cd 1cd 1bo 1cd 1a7 1a7 1a7 1a7 157 15z 14x 12e 12e 12e 12e 12e 12e 1nm xq 12l 12l 12l 12l ji ji ji ji 133 14i 133 133 133 133 133 1bo 133 14i 14i 14i 14i 113 14q 113 181 12e 181 12e 181 12e 15r xq 15r xq 15r xq 15r xq 1b8 14q 1bo 14q 12v 12l 12v 12l 12v 12l 12v 12l 12v 12l 1ap 14q 1ap 14q 1ap 14q 1ap 14q 1bm 14i 1je 18y l6 ji l6 ji l6 ji l6 ji l6 ji 16c 130 l6 ji 183 11u 11u 109 ji 109 ji 109 ra 109 vo 10j l4 1bm 14i 1bm 14i 1bm 14i 1jx 1bm 14i 1cd 133 1cd 133 1cd 133 1ue 1q9 17t s2 17t s2 17t s2 14z xv 14z xv 14z xv 14z xv 12t r7 12t r7 12t r7 1a7 14i 1a7 14i 1a7 14i 1a7 14i 1a7 14i 1a7 14i 1qr 1gk 157 113 157 159 x4 159 x4 159 x4 or' },
  { from: 0x391, widths: '181 17d 109 181 12v 159 1bm 1cd l6 183 181 1km 1bm zy 1cd 1bm 15p 0 12v 12t 157 1cd 17v 1cc 1cd l6 157 133 vo 14i m6 12f 133 14q 12r 133 vo xm 14i 133 m6 14f 100 15v 12r xm 133 190 14q xq 18b 10b 12f 18i 10p 196 1dg' },
  { from: 0x400, widths: '12v 12v 1dz 109 15r 14z l6 l6 l6 1to 1sa 1dz 1ai 1bm 17v 1bm 181 17d 17d 109 1eo 12v 1xn 14f 1bm 1bm 1ai 1b9 1km 1bm 1cd 1bm 15p 15r 12t 17v 1kf 17v 1gs 19z 1ya 23f 1hg 1my 17d 15r 1us 17t 12e 13q 100 tq 19y 12l 1km x2 13v 13v 12m 15o 1ai 13b 133 13b 14q xq wz 113 1kg 10p 166 132 1of 1qw 16r 1fg zz xq 1jb 10j 12l 12l 14m tq xq xv ji ji ji 1ke 1ie 15s 12m 13v 113 13b' },
  { from: 0x2010, widths: 'nm nm 13l sg 1kw 1kw sg sg lm lm lm lm 11e 11e 11e 11e sg sg 10d 10d iy 11y 1kw jt' },
  { from: 0x2030, widths: '29x 2zc f0 pf zu f0 pf zu 15p ng ng' },
  { from: 0x2070, widths: 'ox ch 0 0 ox ox ox ox ox ox u1 u1 u1 ge ge px ox ox ox ox ox ox ox ox ox ox u1 u1 u1 ge ge' },
  { from: 0x20ac, widths: '13l' },
  { from: 0x2150, widths: '1mw 1mw 2cd 1mw 1mw 1mw 1mw 1mw 1mw 1mw 1mw 1mw 1mw 1mw 1mw' },
  { from: 0x2190, widths: '1bo 1bo 1bo 1bo 1bo 1bo' },
  { from: 0x2200, widths: '181 13l uy 12v 12v 1cq 13n 13n 1f0 1f0 16o 1f0 1f0 16o 107 18s 18s 14u 1bo 1bo 13l ks 13l 1bo zm lm 11y 11y 11y 14i 1be 1bo 1f0 1f0 1bo sg sg sg sg 1a7 1a7 1a7 1a7 yp 1gu 21o w0 1jk 22o w0 w0 w0 13l 13l gq 13l 1bo 1bo 1bo 1bo 1bo 1bo 1bo 1bo lc 1bo 1bo 1bo 1bo 1bo 1bo 1bo 1bo 1bo 1bo 1bo 1bo 1bo 1bo 1bo 1bo 1bo 1bo 1bo 1og 1og 1bo 1bo 1bo 1bo 1bo 1bo 1bo 1bo 1bo 1bo 1bo 1bo 1bo 1bo 1bo 1bo' },
  { from: 0x2300, widths: 'y9' },
  { from: 0x25a0, widths: '1hr 1hr 1hr 1hr 1hr 1hr 1hr 1hr 1hr 1hr 12k 12k 1hr 1hr vb vb 17r 17r 17r 17r sk sk 17r 17r sk sk 17r 17r 17r 17r sk sk 17r 17r sk sk 17r 17r 17r 17r 17r 1dn s4 1dn 1dn 1dn 1dn 1dn' },
  { from: 0x2610, widths: '1f0 1f0 1f0' },
  { from: 0x2713, widths: '1bo 1bo 1bo 1bo 1bo' },
];
