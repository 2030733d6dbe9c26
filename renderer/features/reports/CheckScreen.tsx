import { type FormEvent, useCallback, useEffect, useRef, useState } from 'react';
import type { ReportCheck } from '../../../shared-core/contract/report.ts';
import { EXAMPLE_CHECK_CODE } from '../../../shared-core/reports/check-code.ts';
import { bridge } from '../../data/bridge.ts';
import { TextField } from '../../form/Field.tsx';
import { hrefOf } from '../../stores/navigation.ts';
import { sentenceOf } from '../../stores/notices.ts';
import { Banner } from '../../ui/Banner.tsx';
import { Button } from '../../ui/Button.tsx';
import { CallBadge } from '../../ui/CallBadge.tsx';
import { Facts } from '../../ui/Facts.tsx';
import { mcOrDash } from '../../ui/McValue.tsx';
import { Screen, Sheet } from '../../ui/Screen.tsx';
import { useWords } from '../../words.ts';

/** Tells whether a printed sheet says what is in this yard, by its code: scanned into the field, or typed. */
export function CheckScreen({ code: scanned }: { code: string }) {
  const [code, setCode] = useState(scanned);
  const [problem, setProblem] = useState<string | null>(null);
  const [check, setCheck] = useState<ReportCheck | null>(null);
  const { say } = useWords();
  const field = useRef<HTMLInputElement>(null);
  // A scanner types where the focus is, and there is nothing else to do here. The heading has it first.
  useEffect(() => field.current?.focus(), []);

  const ask = useCallback(async (checkCode: string): Promise<void> => {
    setCheck(null);
    setProblem(null);
    try {
      setCheck(await bridge().query('reports.check', { checkCode }));
    } catch (error) {
      setProblem(sentenceOf(error));
    }
  }, []);
  useEffect(() => {
    if (scanned !== '') void ask(scanned);
  }, [scanned, ask]);

  function submit(event: FormEvent): void {
    event.preventDefault();
    if (code.trim() === '') setProblem(say('check.missing-code'));
    else void ask(code.trim());
  }

  return (
    <Screen title={say('check.title')} lead={say('check.lead')}>
      <Sheet>
        <form className="column" onSubmit={submit} noValidate>
          <TextField
            label={say('check.code')}
            hint={say('check.code-hint', { example: EXAMPLE_CHECK_CODE })}
            error={problem}
            value={code}
            onValue={setCode}
            maxLength={80}
            autoCapitalize="characters"
            spellCheck={false}
            ref={field}
          />
          <div className="actions">
            <Button kind="main" type="submit">
              {say('check.check')}
            </Button>
          </div>
        </form>
      </Sheet>
      {check && <Checked check={check} />}
    </Screen>
  );
}

function Checked({
  check: { kind, matches, stated, boardId, boardCode, speciesName, printedAt, roundsSince },
}: {
  check: ReportCheck;
}) {
  const { say, formats } = useWords();
  return (
    <Sheet>
      <Banner kind={matches ? 'done' : 'caution'}>{say(matches ? 'check.matches' : 'check.differs')}</Banner>
      <p>{say(matches ? 'check.matches-how' : 'check.differs-how')}</p>
      {roundsSince > 0 && <p>{say('check.since', { rounds: roundsSince })}</p>}
      <Facts
        of={[
          [say('check.sheet'), say(`report.kind.${kind}`)],
          [say('check.printed'), formats.dateTime(printedAt)],
          [
            say('report.column.board'),
            <span key="code" translate="no">
              {boardCode}
            </span>,
          ],
          [
            say('board.species'),
            <span key="species" translate="no">
              {formats.named(speciesName)}
            </span>,
          ],
          [
            say('report.call'),
            stated?.call ? <CallBadge key="call" call={stated.call} /> : say('report.no-call'),
          ],
          [say('report.read-on'), stated ? formats.day(stated.at, 'year') : say('report.not-probed')],
          [say('report.average'), stated && mcOrDash(stated.averagePct, formats)],
          [say('report.shell'), stated && mcOrDash(stated.shellPct, formats)],
        ]}
      />
      <p>
        <a href={hrefOf({ name: 'board', id: boardId })}>{say('check.go-to-board', { boardCode })}</a>
      </p>
    </Sheet>
  );
}
