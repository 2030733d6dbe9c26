import { useMemo, useState } from 'react';
import { noShapes } from '../../../shared-core/drawing/shapes.ts';
import { drawLabels } from '../../../shared-core/labels/drawing.ts';
import { labelLines, textsToShape } from '../../../shared-core/labels/label-lines.ts';
import type { LabelPaper } from '../../../shared-core/labels/paper.ts';
import { problemOfUsed } from '../../../shared-core/labels/sheet.ts';
import { useLongWork } from '../../data/useLongWork.ts';
import { useEach, useQuery } from '../../data/useQuery.ts';
import { useSettled } from '../../data/useSettled.ts';
import { useSettings } from '../../stores/settings.ts';
import { Button } from '../../ui/Button.tsx';
import { EmptyState, Failed, Screen, Sheet } from '../../ui/Screen.tsx';
import { WorkUnderWay } from '../../ui/WorkUnderWay.tsx';
import { useWords } from '../../words.ts';
import { useBeforePaper } from '../printing/BeforePaper.tsx';
import printingCss from '../printing/printing.module.css';
import { BoardChoice } from './BoardChoice.tsx';
import { FieldsChoice } from './FieldsChoice.tsx';
import { LabelPreview } from './LabelPreview.tsx';
import { MissingSigns } from './MissingSigns.tsx';
import { NotInYard } from './NotInYard.tsx';
import { PaperChoice } from './PaperChoice.tsx';
import { PrintActions } from './PrintActions.tsx';
import { ScanDialog } from './ScanDialog.tsx';

/** Labels of chosen boards: previewed, printed or saved. None is chosen but those that were chosen elsewhere. */
export function LabelsScreen({ boardIds, stackId }: { boardIds: readonly number[]; stackId: number | null }) {
  const papers = useSettings(({ settings }) => settings.labelPapers);
  const [chosen, setChosen] = useState(boardIds);
  const [unknown, setUnknown] = useState<readonly number[]>([]);
  const [paperId, setPaperId] = useState<string | null>(null);
  const [typedUsed, setTypedUsed] = useState<number | null>(0);
  const [isScanning, setScanning] = useState(false);
  const words = useWords();
  const { say } = words;
  const work = useLongWork();
  const printing = useLongWork();
  const beforePaper = useBeforePaper();
  const paper = papers.find(({ id }) => id === paperId) ?? (papers[0] as LabelPaper);
  const { layout } = paper;
  const used = layout.columns * layout.rows > 1 ? (typedUsed ?? 0) : 0;
  const problem = problemOfUsed(used, layout);
  const isUsedRight = problem === null;

  const { output, error, again } = useQuery('labels.contents', { boardIds: [...chosen] });
  // The labels so far stay on screen while those of another choice are on their way.
  const [contents, setContents] = useState(output);
  if (output && output !== contents) {
    setContents(output);
    if (output.includes(null)) {
      setChosen(chosen.filter((_, index) => output[index]));
      setUnknown(chosen.filter((_, index) => output[index] === null));
    }
  }
  const known = useMemo(() => contents?.filter((content) => content !== null) ?? [], [contents]);
  const texts = useMemo(
    () => textsToShape(known.flatMap((content) => labelLines(content, words, paper.fields))),
    [known, words, paper.fields],
  );
  const [shaping] = useEach('labels.shapes', texts.length > 0 ? [{ texts }] : []);
  const shapes = shaping?.output ?? noShapes;
  const drawn = useMemo(() => {
    const pages = isUsedRight ? drawLabels(known, paper, words, used, 'paper', () => shapes) : [];
    return { pages, layout: paper.layout, used };
  }, [known, paper, words, used, isUsedRight, shapes]);
  const isShaping = shaping?.loading ?? false;
  const shown = useSettled(drawn, !isShaping);
  const { pages } = shown;
  const amount = { labels: known.length, pages: pages.length };

  return (
    <Screen
      title={say('labels.title')}
      lead={pages.length > 0 ? say('labels.amount', amount) : say('labels.lead')}
      actions={
        <>
          <PrintActions
            contents={known}
            shapes={shapes}
            amount={amount}
            boardIds={chosen}
            paper={paper}
            used={used}
            disabled={output === null || isShaping}
            work={work}
            printing={printing}
            beforePaper={beforePaper}
          />
          <Button onClick={() => setScanning(true)}>{say('labels.scan')}</Button>
        </>
      }
    >
      {beforePaper.note}
      {isScanning && <ScanDialog onClose={() => setScanning(false)} />}
      {work.underWay && (
        <WorkUnderWay label={say('labels.making-pdf')} {...work.underWay} onCancel={work.cancel} />
      )}
      {printing.underWay && (
        <WorkUnderWay label={say('print.under-way')} {...printing.underWay} onCancel={printing.cancel} />
      )}
      <NotInYard boardIds={unknown} />
      <div className={printingCss.columns}>
        <BoardChoice stackId={stackId} chosen={chosen} onChosen={setChosen} />
        <div className="column">
          <Sheet title={say('labels.preview')}>
            <MissingSigns signs={shapes.missing} />
            {error && <Failed sentence={error} again={again} />}
            {chosen.length === 0 ? (
              <EmptyState sentence={say('labels.none-chosen')} />
            ) : pages.length > 0 ? (
              <LabelPreview {...shown} onUsed={setTypedUsed} />
            ) : (
              isUsedRight &&
              !error && (
                <p className="soft loading" role="status">
                  {say('labels.making-preview')}
                </p>
              )
            )}
          </Sheet>
          <PaperChoice
            paper={paper}
            onPaper={setPaperId}
            used={typedUsed}
            onUsed={setTypedUsed}
            problem={problem && say(problem)}
          />
          <FieldsChoice paper={paper} />
        </div>
      </div>
    </Screen>
  );
}
