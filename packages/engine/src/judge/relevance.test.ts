import { describe, expect, it } from 'vitest';
import { cabinetByHand, exhaustFan, pathByHand } from '../trades/run-by-hand.ts';
import { relevanceIn } from './relevance.ts';

const matters = relevanceIn(cabinetByHand);

describe('which inputs can move a finding', () => {
  it.each([
    ['materials.ABS.emissions.styrene.p50', 'heat', 'peak-air', false],
    ['materials.ABS.emissions.styrene.p50', 'air-quality', 'room-styrene-long', true],
    ['materials.ABS.emissions.styrene.p50', 'air-quality', 'room-particles-24h', false],
    ['materials.ABS.emissions.styrene.p50', 'air-quality', 'unguarded-release', true],
    ['room.background.particles', 'air-quality', 'room-particles-24h', true],
    ['room.background.PM2.5', 'air-quality', 'room-pm25-24h', true],
    ['room.background.PM2.5', 'airflow', 'fan-flow', false],
    ['paths.exhaust.parts.0.efficiency.particles', 'air-quality', 'reaches-room-styrene', false],
    ['room.deposition', 'air-quality', 'bay-styrene', false],
    ['room.deposition', 'air-quality', 'bay-particles', true],
    ['factors.emissionVapours', 'air-quality', 'bay-styrene', true],
    ['room.heatLoss', 'air-quality', 'room-styrene-long', true],
    ['room.heatLoss', 'heat', 'peak-air', true],
    ['light.reflectances.plywood', 'heat', 'peak-air', false],
    ['light.reflectances.plywood', 'light', 'print-light', true],
    ['room.temperature.0.1', 'light', 'print-light', false],
    ['machines.left.frameArea', 'light', 'print-light', true],
    ['room.temperature.0.1', 'light', 'lit-while-printing', true],
    ['cameras.eye.iso', 'air-quality', 'bay-styrene', false],
    ['factors.leakage', 'draught', 'air-speed', true],
    ['fit.tolerance', 'fit', 'gap-back', true],
    ['fit.machines.left.cableRear', 'heat', 'peak-air', false],
    ['room.heatLoss', 'fit', 'gap-back', false],
    ['room.size.depth', 'fit', 'swing-room', true],
    ['fittings.eye.arm.length', 'fittings', 'camera-blur', true],
    ['fittings.eye.arm.length', 'draught', 'air-speed', false],
    ['machines.left.mass', 'structure', 'shelf-sag', true],
    ['machines.left.mass', 'heat', 'peak-air', false],
    ['machines.left.standsOn.foam.damping', 'air-quality', 'unguarded-release', false],
    ['structure.boards.plywood.along', 'sound', 'loudest', false],
    ['room.heatLoss', 'vibration', 'reversal-gain', false],
    ['sound.machines.left.printingDbA', 'heat', 'peak-air', false],
    ['sound.machines.left.printingDbA', 'sound', 'noise', true],
    ['power.tariff.0.1', 'heat', 'peak-air', false],
    ['power.tariff.0.1', 'power', 'day-cost', true],
    ['machines.left.mains.inrush', 'air-quality', 'bay-styrene', false],
    ['spools.left-ABS.path.bends', 'draught', 'air-speed', false],
    ['machines.left.drive.gap', 'filament', 'filament-push', true],
    ['factors.bedLoss', 'filament', 'filament-pull', false],
    ['factors.bedLoss', 'filament', 'spool-air', true],
    ['factors.bedLoss', 'power', 'inrush', false],
  ] as const)('exact: %s for %s/%s: %s', (path, trade, quantity, answer) => {
    expect(matters(path, { trade, quantity })).toBe(answer);
  });

  it('property: where the air’s quality switches a fan, everything may matter', () => {
    const control = { kind: 'air-quality', contaminant: 'particles', place: 'lower', on: 1e11, off: 1e10 } as const;
    const fed = { ...cabinetByHand, paths: { exhaust: pathByHand('lower', 'room', 0.7, [exhaustFan(control)]) } };
    expect(relevanceIn(fed)('materials.ABS.emissions.particles.p50', { trade: 'heat', quantity: 'peak-air' })).toBe(
      true,
    );
  });
});
