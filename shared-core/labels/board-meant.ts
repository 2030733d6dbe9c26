interface WithCode {
  code: string;
}

/** Where the board of that ID is among them; -1 where it is not. Capitals make no difference. */
export const indexOfCode = (boards: readonly WithCode[], code: string): number =>
  boards.findIndex((board) => board.code.toLowerCase() === code.trim().toLowerCase());

/** The boards that may be meant by an ID, by the number at its end ("3" for WAL-03) or by a part of it. */
export function boardsMeant<Board extends WithCode>(boards: readonly Board[], typed: string): Board[] {
  const part = typed.trim().toLowerCase();
  const tests: ((code: string) => boolean)[] = [
    (code) => code === part,
    (code) => /^\d+$/.test(part) && Number(/\d+$/.exec(code)?.[0]) === Number(part),
    (code) => code.includes(part),
  ];
  return (
    tests
      .map((isMeant) => boards.filter(({ code }) => isMeant(code.toLowerCase())))
      .find((found) => found.length > 0) ?? []
  );
}
