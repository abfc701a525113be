// What a person chooses before a question is asked.

import type { Want } from '@stillair/engine';
import { useEffect } from 'preact/compat';
import type { ControlsProps } from './answer.ts';

export function DayChoice({ look, wishes, onWishes }: ControlsProps) {
  const days = Object.keys(look.cabinet.days);
  if (days.length < 2) return null;
  return (
    <label>
      on{' '}
      <select
        value={wishes.days?.[0] ?? ''}
        onChange={({ currentTarget: { value } }) => {
          const { days: _all, ...rest } = wishes;
          onWishes(value === '' ? rest : { ...wishes, days: [value] });
        }}
      >
        <option value="">all days</option>
        {days.map((id) => (
          <option key={id} value={id}>
            {id}
          </option>
        ))}
      </select>
    </label>
  );
}

/** A file of this computer; nothing of it is sent anywhere. */
export function FileChoice({
  label,
  accept,
  wishes,
  onWishes,
}: ControlsProps & { readonly label: string; readonly accept?: string }) {
  return (
    <label className="file-choice">
      {label}{' '}
      <input
        type="file"
        {...(accept === undefined ? {} : { accept })}
        onChange={({ currentTarget: { files } }) => {
          const { file: _before, ...rest } = wishes;
          const [file] = files ?? [];
          onWishes(file === undefined ? rest : { ...rest, file });
        }}
      />
    </label>
  );
}

export function JobFileChoice(props: ControlsProps) {
  const { look, wishes, onWishes } = props;
  const machines = Object.keys(look.cabinet.machines);
  useEffect(() => {
    if (wishes.machine === undefined && machines[0] !== undefined) onWishes({ ...wishes, machine: machines[0] });
  });
  return (
    <>
      <FileChoice {...props} label="job file" />
      <Choice
        label="for"
        value={wishes.machine ?? ''}
        words={machines}
        onChange={(machine) => onWishes({ ...wishes, machine })}
      />
      <Choice
        label="of"
        value={wishes.material ?? ''}
        words={Object.keys(look.cabinet.materials)}
        empty="the material nearest to its set-points"
        onChange={(material) => {
          const { material: _before, ...rest } = wishes;
          onWishes(material === '' ? rest : { ...rest, material });
        }}
      />
    </>
  );
}

export function DiaryChoice(props: ControlsProps) {
  const { wishes, onWishes } = props;
  const { today = dateToday() } = wishes;
  useEffect(() => {
    if (wishes.today === undefined) onWishes({ ...wishes, today });
  });
  return (
    <>
      <FileChoice {...props} label="diary, if there is one" accept=".yaml,.yml" />
      <label>
        on{' '}
        <input
          type="date"
          required
          value={today}
          onChange={({ currentTarget: { value } }) => onWishes({ ...wishes, today: value })}
        />
      </label>
    </>
  );
}

/** By the clock and the calendar of this computer. */
export function dateToday(): string {
  const now = new Date();
  const two = (number: number): string => String(number).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

export function Choice({
  label,
  value,
  words,
  empty,
  onChange,
}: {
  readonly label: string;
  readonly value: string;
  readonly words: readonly string[];
  readonly empty?: string;
  readonly onChange: (value: string) => void;
}) {
  return (
    <label>
      {label}{' '}
      <select value={value} onChange={(event) => onChange(event.currentTarget.value)}>
        {empty !== undefined && <option value="">{empty}</option>}
        {words.map((word) => (
          <option key={word} value={word}>
            {word}
          </option>
        ))}
      </select>
    </label>
  );
}

const wantWords: Readonly<Record<Want, string>> = {
  quiet: 'quieter',
  cheap: 'cheaper',
  cool: 'cooler',
  clean: 'cleaner air in the room',
  still: 'stiller air at the prints',
};

/** One want has a best variant, several have a front. */
export function WantsChoice({ wishes, onWishes }: ControlsProps) {
  const { wants = ['quiet'] } = wishes;
  return (
    <fieldset className="wants">
      <legend>wanted</legend>
      {(Object.entries(wantWords) as [Want, string][]).map(([want, words]) => (
        <label key={want}>
          <input
            type="checkbox"
            checked={wants.includes(want)}
            onChange={({ currentTarget: { checked } }) =>
              onWishes({ ...wishes, wants: checked ? [...wants, want] : wants.filter((each) => each !== want) })
            }
          />{' '}
          {words}
        </label>
      ))}
    </fieldset>
  );
}

const samplesOffered: readonly number[] = [32, 128, 512];
const USUAL_SAMPLES = 128;

/** More samples take longer, and tell finer chances. */
export function SamplesChoice(props: ControlsProps) {
  const { wishes, onWishes } = props;
  const { samples = USUAL_SAMPLES } = wishes;
  useEffect(() => {
    if (wishes.samples === undefined) onWishes({ ...wishes, samples });
  });
  return (
    <>
      <DayChoice {...props} />
      <Choice
        label="samples"
        value={String(samples)}
        words={samplesOffered.map(String)}
        onChange={(value) => onWishes({ ...wishes, samples: Number(value) })}
      />
    </>
  );
}
