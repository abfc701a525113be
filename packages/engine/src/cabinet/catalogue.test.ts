import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { catalogueData as generated } from '../../../../tools/catalogue.mjs';
import { catalogueData } from './catalogue.data.ts';
import { findPart, kindsOf, partGroups } from './catalogue.ts';
import { fitResistance } from './fill-part.ts';

describe('the catalogue', () => {
  it('exact: the data file is in step with the YAML files', () => {
    expect(readFileSync(join(import.meta.dirname, 'catalogue.data.ts'), 'utf8')).toBe(generated());
  });

  it.each(partGroups)('exact: every entry of %s can be read and names its source', (group) => {
    const kinds = kindsOf(undefined, group);
    expect(kinds.length).toBeGreaterThan(0);
    for (const kind of kinds) {
      const entry = findPart(undefined, group, kind)!;
      expect(entry.source, `${group}: ${kind}`).not.toBe('catalogue');
      expect(kind, 'kinds hold no dot and no slash: paths are made of them').not.toMatch(/[./"]/);
    }
  });

  it('exact: no group stands in the files that the schema does not know', () => {
    expect(Object.keys(catalogueData).sort((a, b) => a.localeCompare(b))).toEqual(
      [...partGroups].sort((a, b) => a.localeCompare(b)),
    );
  });

  it('property: fan curves fall from a flow of 0 to a pressure of 0', () => {
    for (const kind of kindsOf(undefined, 'fans')) {
      const curve = findPart(undefined, 'fans', kind)!.spec.curve!;
      expect(curve[0]![0]).toBe(0);
      expect(curve.at(-1)![1]).toBe(0);
      for (const [index, [flow, pressure]] of curve.entries()) {
        if (index === 0) continue;
        expect(flow).toBeGreaterThan(curve[index - 1]![0]);
        expect(pressure).toBeLessThan(curve[index - 1]![1]);
      }
    }
  });

  it('property: finer filters of one size resist more and hold more', () => {
    const [e11, e12, h13] = ['E11', 'E12', 'H13'].map(
      (name) => findPart(undefined, 'filters', `pleated ${name} 150 mm`)!.spec,
    );
    const loss = (spec: typeof e11): number => fitResistance(spec!.resistance!).linear;
    expect(loss(e11)).toBeLessThan(loss(e12));
    expect(loss(e12)).toBeLessThan(loss(h13));
    expect(e11!.efficiency!['particles']!.value).toBeLessThan(h13!.efficiency!['particles']!.value);
  });

  it('property: no material prints best where it does not print well, nor with p10 above p90', () => {
    for (const kind of kindsOf(undefined, 'materials')) {
      const { 'prints-well': well, 'prints-best': best, emissions } = findPart(undefined, 'materials', kind)!.spec;
      expect(best![0]).toBeGreaterThanOrEqual(well![0]);
      for (const rate of Object.values(emissions!)) {
        expect(rate!.low!).toBeLessThan(rate!.value);
        expect(rate!.high!).toBeGreaterThan(rate!.value);
      }
    }
  });
});

describe('fitResistance', () => {
  it('exact: two points of a quadratic give its two coefficients', () => {
    const law = (flow: number): readonly [number, number] => [flow, 1000 * flow + 2e5 * flow ** 2];
    const { linear, quadratic } = fitResistance([law(0.005), law(0.02)]);
    expect(linear).toBeCloseTo(1000, 6);
    expect(quadratic).toBeCloseTo(2e5, 3);
  });

  it('limit: one point, or a sagging pair, gives a straight line; a steep pair a pure square', () => {
    expect(fitResistance([[0.01, 20]])).toEqual({ linear: 2000, quadratic: 0 });
    expect(
      fitResistance([
        [0.01, 20],
        [0.02, 30],
      ]).quadratic,
    ).toBe(0);
    expect(
      fitResistance([
        [0.01, 1],
        [0.02, 10],
      ]).linear,
    ).toBe(0);
    expect(fitResistance([])).toEqual({ linear: 0, quadratic: 0 });
  });
});
