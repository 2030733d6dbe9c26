import type { ProjectFields, ProjectOnPage } from '../../../shared-core/contract/requests/dates.ts';
import type { BoardRow } from '../../../shared-core/contract/yard.ts';
import { type InTime, inTime } from '../../../shared-core/probing/plan/in-time.ts';
import { type Message, message } from '../../../shared-core/words/message.ts';
import { type AppContext, orConflict, orRefuse, type QueryContext, refusingDuplicates } from '../context.ts';
import { dayOf } from '../forecast/judging-board.ts';
import type { Commands, Queries } from '../handlers.ts';
import { checkInYard } from './open-ones.ts';

type Verdict = Pick<ProjectOnPage['boards'][number], 'makesIt' | 'why'>;

/** At most so many places are named where a board would be in time. */
const MOST_PLACES = 3;

function verdictOf(
  found: InTime,
  { placeName, placeId, judgement }: BoardRow,
  nameOf: (id: number) => string,
): Verdict {
  switch (found.is) {
    case 'ready':
      return { makesIt: 'yes', why: message('in-time.ready') };
    case 'here':
      return {
        makesIt: 'yes',
        why: message('in-time.here', { likelyOn: found.on, placeName, isSure: found.isSure ? 'yes' : 'no' }),
      };
    case 'elsewhere': {
      const places = found.places
        .slice(0, MOST_PLACES)
        .map(
          ({ placeId: id, on }): Message => message('in-time.place', { placeName: nameOf(id), likelyOn: on }),
        );
      return { makesIt: 'if-moved', why: message('in-time.elsewhere', { placeName, places }) };
    }
    case 'late':
      return {
        makesIt: 'no',
        why: message('in-time.late', {
          likelyOn: found.on,
          placeName: nameOf(found.placeId),
          isHere: found.placeId === placeId ? 'yes' : 'no',
        }),
      };
    case 'never':
      return { makesIt: 'no', why: message('in-time.never') };
    case 'unknown':
      return { makesIt: null, why: judgement.next.why ?? judgement.reasons[0] ?? message('in-time.unknown') };
  }
}

export const projectQueries = (context: QueryContext) =>
  ({
    'projects.list': () => {
      const { boards, places, projects } = context.yard();
      const names = new Map(places.list().map(({ id, name }) => [id, name]));
      const nameOf = (id: number) => orRefuse(names.get(id), 'place');
      const today = dayOf(context.now());
      return projects.list().map((project) => ({
        ...project,
        boards: projects.boardIds(project.id).map((boardId) => {
          const board = orRefuse(boards.get(boardId), 'board');
          const { code, stackName, placeName, judgement } = board;
          const verdict = verdictOf(inTime(judgement, project.neededBy, today), board, nameOf);
          return { boardId, code, stackName, placeName, ...verdict };
        }),
      }));
    },
    'reservations.ofBoard': ({ boardId }) => context.yard().projects.ofBoard(boardId) ?? null,
  }) satisfies Partial<Queries>;

/** Projects, and the boards that are reserved for them. */
export function projectCommands(context: AppContext) {
  const get = (id: number) => orRefuse(context.yard().projects.get(id), 'project');
  const taken = (projectName: string) => message('refusal.project-name-taken', { projectName });
  const add = (project: ProjectFields): number =>
    refusingDuplicates(taken(project.name), () => context.yard().projects.add(project));
  return {
    'projects.add': (project) => get(add(project)),
    'projects.edit': (edit) => {
      const before = get(edit.id);
      const name = edit.changed.name ?? before.name;
      orConflict(refusingDuplicates(taken(name), () => context.yard().projects.edit(edit)));
      return get(edit.id);
    },
    'projects.delete': ({ id, basedOn }) => {
      const project = get(id);
      const { acts, projects } = context.yard();
      if (!projects.remove(id, basedOn)) orConflict(project);
      return { act: acts.now() };
    },
    'reservations.set': ({ boardIds, projectId: chosenId, newProject }) => {
      const { acts, projects } = context.yard();
      const projectId = newProject === null ? chosenId : add(newProject);
      if (projectId !== null) get(projectId);
      const ids = [...new Set(boardIds)];
      checkInYard(context, ids);
      for (const id of ids) projects.reserve(id, projectId);
      return { act: acts.now() };
    },
  } satisfies Partial<Commands>;
}
