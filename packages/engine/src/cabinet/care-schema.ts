// Schema of `care:`: intervals of the person's own, by part and by what is done to it.

import { type CareAction, type CareInterval, careActions } from './care.ts';
import { INTERVAL_FORM, parseCareInterval } from './care-interval.ts';
import { fromText, mapOf, type Schema, thing } from './shape.ts';

export type CareSpec = Readonly<Record<string, Readonly<Partial<Record<CareAction, CareInterval>>>>>;

export function careSchema(): Schema<CareSpec> {
  const interval = (action: string): Schema<CareInterval> =>
    fromText((input) => parseCareInterval(String(input)), false, `how often to ${action} it`, INTERVAL_FORM);
  const actions = Object.fromEntries(Object.keys(careActions).map((action) => [action, interval(action).optional()]));
  return mapOf(
    thing(actions, 'what is done to it'),
    'care of parts, such as filter exhaust: { change: 400 h or 6 months }',
    'part that "stillair care" names',
  ) as unknown as Schema<CareSpec>;
}
