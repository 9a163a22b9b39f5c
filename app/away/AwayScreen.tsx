import { useTranslations } from 'next-intl';
import { BatchScreen } from '#app/batch/BatchScreen.tsx';
import { MoveScreen } from '#app/batch/MoveScreen.tsx';
import { NewBatchScreen } from '#app/batch/NewBatchScreen.tsx';
import { NextScreen } from '#app/batch/NextScreen.tsx';
import { ProofScreen } from '#app/batch/ProofScreen.tsx';
import type { ScreenGiven } from '#app/client/screen.ts';
import { DeviationScreen } from '#app/deviation/DeviationScreen.tsx';
import { DeviationsScreen } from '#app/deviation/DeviationsScreen.tsx';
import { NewDeviationScreen } from '#app/deviation/NewDeviationScreen.tsx';
import { KitchenScreen } from '#app/kitchen/KitchenScreen.tsx';
import { ProbeScreen } from '#app/probe/ProbeScreen.tsx';
import { ProbesScreen } from '#app/probe/ProbesScreen.tsx';
import { givenRound } from '#app/round/given-round.ts';
import { Round } from '#app/round/Round.tsx';
import { DarkScreen } from '#app/science/DarkScreen.tsx';
import { PowerScreen } from '#app/science/PowerScreen.tsx';
import { Headband } from '#app/ui/Headband.tsx';
import { KeyLink } from '#app/ui/KeyLink.tsx';
import { Sheet } from '#app/ui/Sheet.tsx';
import css from './away.module.css';
import type { Place } from './place-of.ts';

type Props = { given: ScreenGiven; signedIn: readonly string[]; place: Place };

/** The screen of this address, drawn by the phone; one that needs the book says so and leads to the kitchen. */
export function AwayScreen({ given, signedIn, place }: Props) {
  switch (place.screen) {
    case 'kitchen':
      return <KitchenScreen given={given} wall={place.asked.wall} />;
    case 'round':
      return <AwayRound given={given} signedIn={signedIn} asked={place.asked} />;
    case 'batch':
      return <BatchScreen given={given} id={place.id} asked={place.asked} />;
    case 'next':
      return <NextScreen given={given} id={place.id} asked={place.asked} />;
    case 'proof':
      return <ProofScreen given={given} id={place.id} asked={place.asked} />;
    case 'new_batch':
      return <NewBatchScreen given={given} asked={place.asked} />;
    case 'move':
      return <MoveScreen given={given} equipment={place.asked.equipment} />;
    case 'power':
      return <PowerScreen given={given} back={place.asked.back === '1'} />;
    case 'dark':
      return <DarkScreen given={given} />;
    case 'deviations':
      return <DeviationsScreen given={given} />;
    case 'new_deviation':
      return <NewDeviationScreen given={given} asked={place.asked} />;
    case 'deviation':
      return <DeviationScreen given={given} reference={place.id} />;
    case 'probes':
      return <ProbesScreen given={given} />;
    case 'probe':
      return given.hand === null ? (
        <ProbesScreen given={given} />
      ) : (
        <ProbeScreen given={given} probe={place.id} by={given.hand} />
      );
    case 'needs_the_book':
      return <NeedsTheBook />;
  }
}

/** The round goes on from where its state was: it is given once, and not anew with each minute. */
function AwayRound({ given, signedIn, asked }: Omit<Props, 'place'> & { asked: Record<string, string> }) {
  const t = useTranslations('round');
  const hands = signedIn.map((person) => ({ person }));
  const round = givenRound(given.book, { site: given.site, hand: given.hand, hands }, given.locale, asked, t);
  return <Round given={round} />;
}

function NeedsTheBook() {
  const t = useTranslations('kitchen.away');
  const common = useTranslations('common');
  return (
    <Sheet>
      <Headband back={{ href: '/', words: common('kitchen_now') }} />
      <main className={css.words}>
        <p>{t('needs_the_book')}</p>
        <KeyLink href="/" kind="save" wide>
          {common('kitchen_now')}
        </KeyLink>
      </main>
    </Sheet>
  );
}
