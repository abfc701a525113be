// A small cabinet of which every question has a quick answer: one machine, one job, one option.

export const smallCabinet = `stillair: 1
title: Small box
currency: EUR
room: { size: 4 m x 3 m x 2.5 m, temperature: 20 °C }
people: { desk: { at: [1.5 m, -1 m, 1.2 m], hours: [9:00 to 17:00] } }
cabinet: { inside: 620 mm x 600 mm x 800 mm, made-of: plywood 18 mm, door: glass 4 mm }
bays: { box: { z: 0 mm to 800 mm } }
machines: { wren: { kind: moving bed 220, bay: box } }
sensors: { top: { bay: box, height: 700 mm } }
days:
  usual:
    jobs: { hook: { machine: wren, material: PLA, start: 9:00, for: 2 h, mass: 20 g } }
queue:
  from: 2026-11-30 8:30
  jobs: { hook: { machine: wren, material: PLA, for: 2 h, mass: 20 g } }
options:
  vented: { title: a hole at the top, edits: [{ set: { room.air-changes: 1 /h } }] }
`;
