import { useMemo, useState } from 'react';
import {
  boardReportKindSchema,
  type ReportContent,
  type ReportKind,
  stackReportKindSchema,
} from '../../../shared-core/contract/report.ts';
import { type Paper, paperSchema, usualPaper } from '../../../shared-core/drawing/paper.ts';
import { shapedPages, textsOfPages } from '../../../shared-core/drawing/shaped-pages.ts';
import { noShapes } from '../../../shared-core/drawing/shapes.ts';
import { drawReport } from '../../../shared-core/reports/draw-report.ts';
import { useLongWork } from '../../data/useLongWork.ts';
import { useEach, useQuery } from '../../data/useQuery.ts';
import { useSettled } from '../../data/useSettled.ts';
import { Choice } from '../../form/Choice.tsx';
import { region } from '../../region.ts';
import { hrefOf } from '../../stores/navigation.ts';
import { Await } from '../../ui/Await.tsx';
import { Screen, Sheet } from '../../ui/Screen.tsx';
import { WorkUnderWay } from '../../ui/WorkUnderWay.tsx';
import { usePaperWords, useWords } from '../../words.ts';
import { MissingSigns } from '../labels/MissingSigns.tsx';
import { PrinterChoice } from '../printing/PrinterChoice.tsx';
import printingCss from '../printing/printing.module.css';
import { PagesPreview } from './PagesPreview.tsx';
import { ReportActions } from './ReportActions.tsx';

/** A report of a board or a stack as it will be on paper: looked over, printed or saved. */
export function ReportScreen({ kind: first, id }: { kind: ReportKind; id: number }) {
  const [kind, setKind] = useState(first);
  const [paper, setPaper] = useState<Paper>(() => usualPaper(region().locale));
  const content = useQuery('reports.content', { kind, id });
  const onPaper = usePaperWords();
  const { say } = useWords();
  const work = useLongWork();
  const printing = useLongWork();
  const drawn = useMemo(
    () => (content.output ? drawReport(content.output, paper, onPaper) : []),
    [content.output, paper, onPaper],
  );
  const texts = useMemo(() => textsOfPages(drawn), [drawn]);
  const [shaping] = useEach('labels.shapes', texts.length > 0 ? [{ texts }] : []);
  const shapes = shaping?.output ?? noShapes;
  const shaped = useMemo(() => shapedPages(drawn, shapes), [drawn, shapes]);
  const pages = useSettled(shaped, !(shaping?.loading ?? false));
  const kinds = boardReportKindSchema.safeParse(kind).success
    ? boardReportKindSchema.options
    : stackReportKindSchema.options;
  return (
    <Screen
      title={
        content.output ? say('report.screen-title', { name: nameOf(content.output) }) : say('report.print')
      }
      lead={pages.length > 0 && say('report.lead', { pages: pages.length })}
      actions={
        <ReportActions report={{ kind, id }} paper={paper} pages={pages} work={work} printing={printing} />
      }
    >
      {work.underWay && (
        <WorkUnderWay label={say('report.making-pdf')} {...work.underWay} onCancel={work.cancel} />
      )}
      {printing.underWay && (
        <WorkUnderWay label={say('print.under-way')} {...printing.underWay} onCancel={printing.cancel} />
      )}
      <div className={printingCss.columns}>
        <Sheet>
          <Choice
            label={say('report.which')}
            value={kind}
            options={kinds.map((each) => ({ value: each as string, label: say(`report.kind.${each}`) }))}
            onValue={(chosen) => setKind(chosen as ReportKind)}
          />
          <Choice
            label={say('report.paper')}
            value={paper as string}
            options={paperSchema.options.map((each) => ({
              value: each as string,
              label: say(`report.paper.${each}`),
            }))}
            onValue={(chosen) => setPaper(chosen as Paper)}
          />
          <PrinterChoice paper={paper} />
          <p>
            <a href={hrefOf({ name: 'check' })}>{say('report.check-link')}</a>
          </p>
        </Sheet>
        <Sheet title={say('report.preview')}>
          <MissingSigns signs={shapes.missing} />
          <Await of={[content]}>{({ kind: shown }) => <PagesPreview key={shown} pages={pages} />}</Await>
        </Sheet>
      </div>
    </Screen>
  );
}

const nameOf = (content: ReportContent): string =>
  'board' in content ? content.board.code : content.stack.name;
