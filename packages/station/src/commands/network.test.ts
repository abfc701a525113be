import { describe, expect, it } from 'vitest';
import { fakeIo } from '../fake-io.ts';
import { fixture } from '../fixture-files.ts';
import { type NetworkOptions, network } from './network.ts';

/** One zone of 1 kJ/K that loses 2 W/K to a room at 20 °C and is given 40 W: it tends to 40 °C with a time constant of 500 s. */
const cooling = fixture('one-zone.yaml');

async function run(options: NetworkOptions, text = cooling) {
  const io = fakeIo({ files: { 'zone.yaml': text } });
  return { code: await network('zone.yaml', options, io), ...io.printed };
}

describe('stillair network', () => {
  it('exact: gives the temperature of the closed form at the times asked for', async () => {
    const { out } = await run({ at: [500, 1500], json: true });
    const { temperatures } = JSON.parse(out) as { temperatures: { bay: number[] } };
    expect(temperatures.bay[0]).toBeCloseTo(40 - 20 * Math.exp(-1), 2);
    expect(temperatures.bay[1]).toBeCloseTo(40 - 20 * Math.exp(-3), 2);
  });

  it('tells start and end as a table', async () => {
    const { code, out } = await run({});
    expect(code).toBe(0);
    expect(out).toMatch(/^temperature, °C +0 s +3600 s$/m);
    expect(out).toMatch(/^bay +20 +39\.98\d*$/m);
  });

  it.each([
    [{ at: [7200] }, cooling, 'stillair network: --at: 7200 s is after the end of the run, 3600 s\n'],
    [{}, '', undefined],
    [{}, cooling.replace('heat_capacity_J_K', 'heat_capacty_J_K'), undefined],
  ])('exits 2 on a wrong time or file (%j)', async (options, text, message) => {
    const { code, err, out } = await run(options, text);
    expect(code).toBe(2);
    expect(out).toBe('');
    if (message === undefined) expect(err).toMatch(/^zone\.yaml:\d+:\d+ {2}error {2}/);
    else expect(err).toBe(message);
  });
});
