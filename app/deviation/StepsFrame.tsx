'use client'; // one step open at a time on a phone, all of them where there is room
import { type ReactNode, useEffect, useState } from 'react';
import { Step } from '#app/ui/Step.tsx';

export type StepShown = {
  number: number;
  title: string;
  answer: ReactNode;
  done: boolean;
  inside: ReactNode;
};

const roomForAll = '(min-width: 44em)'; // as in Step.module.css

export function StepsFrame({ steps, first }: { steps: StepShown[]; first: number }) {
  const [open, setOpen] = useState<ReadonlySet<number>>(new Set([first]));
  useEffect(() => {
    if (window.matchMedia(roomForAll).matches) setOpen(new Set([1, 2, 3, 4]));
  }, []);
  return steps.map(({ number, title, answer, done, inside }) => (
    <Step
      key={number}
      number={number}
      title={title}
      answer={open.has(number) ? undefined : answer}
      done={done}
      open={open.has(number)}
      onOpen={() => setOpen(new Set([number]))}
    >
      {inside}
    </Step>
  ));
}
