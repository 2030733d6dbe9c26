import type { yardFile as english } from '../en/yard-file.ts';

export const yardFile = {
  'yard-note.changes-repaired':
    '{changes, plural, one {# neuere Änderung war} other {# neuere Änderungen waren}} auf der Festplatte beschädigt und {changes, plural, one {wurde} other {wurden}} repariert. Nichts ging verloren. Die Festplatte fällt vielleicht aus: Speichern Sie eine Kopie auf einer anderen.',
  'yard-note.changes-missing':
    '{changes, plural, one {# Ihrer letzten Änderungen fehlt. Sie stammt vom {newestAt}.} other {# Ihrer letzten Änderungen fehlen. Die neueste stammt vom {newestAt}.}} Die Datei eines Holzplatzes wurde entfernt oder ersetzt, während Pintally geschlossen war. Prüfen Sie Ihre letzten Messwerte. Vielleicht hat eine Sicherung sie.',
  'yard-note.wal-brought-back':
    'Die letzten Änderungen von {file} wurden {how, select, deleted {gelöscht oder verschoben} other {ersetzt}}, während Pintally geöffnet war. Nichts ging verloren: Pintally hatte diese Änderungen noch.',
  'yard-note.rescued-copies':
    'Die Datei des Holzplatzes wurde außerhalb von Pintally gelöscht oder geändert, während sie geöffnet war. Was bis dahin gespeichert war, ist in {copies, plural, one {einer geretteten Kopie} other {# geretteten Kopien}}: {names}. Fehlt hier etwas, stellen Sie es mit „Aus einer Datei wiederherstellen“ wieder her.',
  'yard-note.taken-back':
    'Pintally wurde geschlossen, während es viele Bretter änderte. Alles ist wie vor dieser Änderung. Machen Sie sie noch einmal, wenn Sie sie noch wollen.',
  'yard-note.taken-back-restored':
    'Diese Sicherung entstand, während viele Bretter geändert wurden. Sie sind wie vor dieser Änderung.',
  'yard-note.built-in-repaired':
    '{entries, plural, one {# mitgelieferte Holzart oder Verwendung war} other {# mitgelieferte Holzarten und Verwendungen waren}} auf der Festplatte beschädigt und {entries, plural, one {wurde} other {wurden}} repariert. Die Festplatte fällt vielleicht aus: Speichern Sie eine Kopie auf einer anderen.',
  'yard-note.rules-repaired':
    '{rules, plural, one {# Regel} other {# Regeln}} in der Datei des Holzplatzes {rules, plural, one {war} other {waren}} auf der Festplatte beschädigt und {rules, plural, one {wurde} other {wurden}} repariert. Nichts ging verloren. Die Festplatte fällt vielleicht aus: Speichern Sie eine Kopie auf einer anderen.',
  'yard-note.entries-damaged':
    'Ein Fehler der Festplatte hat beschädigt: {entries}. {nextSentences} Oder stellen Sie eine Sicherung wieder her.',
  'yard-note.damaged-defaults': 'Stattdessen gelten die mitgelieferten Werte.',
  'yard-note.damaged-blank': 'Leere Werte sind verloren.',
  'yard-note.damaged-check':
    '{entries, plural, one {Öffnen, prüfen und speichern Sie den Eintrag.} other {Öffnen, prüfen und speichern Sie jeden davon.}}',
  'yard-note.damaged-describe':
    '{meters, plural, one {Richten Sie das Messgerät auf der Seite „Messgerät“ neu ein.} other {Richten Sie die Messgeräte auf der Seite „Messgerät“ neu ein.}}',
  'yard-note.damaged-check-settings': 'Prüfen Sie die Einstellungen.',
  'yard-note.damaged-place': 'das Klima am Ort {name}',
  'yard-note.damaged-species': 'die Holzart {name}',
  'yard-note.damaged-use': 'die Verwendung {name}',
  'yard-note.damaged-meter': 'die Einrichtung des Messgeräts {name}',
  'yard-note.damaged-settings': 'die Einstellungen',
  'damaged.entry': 'Beschädigt',
  'damaged.place':
    'Ein Fehler der Festplatte hat die Klimadaten dieses Orts beschädigt. Wo Werte verloren sind, gilt durchschnittliches Klima. Bearbeiten, prüfen und speichern Sie den Ort. Oder stellen Sie eine Sicherung wieder her.',
  'damaged.species':
    'Ein Fehler der Festplatte hat die Werte dieser Holzart beschädigt. Leere Werte sind verloren. Bearbeiten, prüfen und speichern Sie sie. Oder stellen Sie eine Sicherung wieder her.',
  'damaged.species-built-in':
    'Ein Fehler der Festplatte hat die Werte dieser Holzart beschädigt. Stattdessen gelten die mitgelieferten Werte. Bearbeiten, prüfen und speichern Sie sie. Oder stellen Sie eine Sicherung wieder her.',
  'damaged.use':
    'Ein Fehler der Festplatte hat die Werte dieser Verwendung beschädigt. Stattdessen gelten die mitgelieferten Werte. Bearbeiten, prüfen und speichern Sie sie. Oder stellen Sie eine Sicherung wieder her.',
  'yard-note.salvaged':
    'Aus der beschädigten Datei gerettet: {boards, plural, one {# Brett} other {# Bretter}} und {readings, plural, one {# Messwert} other {# Messwerte}}. {nextSentences}',
  'yard-note.salvaged.lost':
    '{lost, plural, one {# Messwert ist verloren oder beschädigt.} other {# Messwerte sind verloren oder beschädigt.}}',
  'yard-note.salvaged.more': 'Es kann mehr verloren sein: Nicht alles lässt sich zählen.',
  'yard-note.salvaged.file': 'Die beschädigte Datei liegt im selben Ordner: {damagedFile}.',
  'yard-note.salvaged.file-renamed': 'Die beschädigte Datei liegt unter anderem Namen im selben Ordner.',
  'yard-note.salvaged.backup':
    'Die Sicherung vom {backupAt} hat {more, plural, one {# Messwert} other {# Messwerte}} mehr.',
  'yard-note.readings-damaged':
    'Ein Fehler der Festplatte hat {readings, plural, one {# Messwert} other {# Messwerte}} verändert. {readings, plural, one {Er wird} other {Sie werden}} nicht verwendet. {boards} {backup}',
  'yard-note.readings-damaged.boards':
    'Messen Sie nach: {boardCodes}{more, plural, =0 {} one { und # weiteres Brett} other { und # weitere Bretter}}.',
  'yard-note.readings-damaged.no-board': 'Die Bretter sind nicht mehr bekannt.',
  'yard-note.readings-damaged.backup':
    'Oder stellen Sie die Sicherung vom {backupAt} wieder her: Sie hat {readings, plural, one {ihn} other {sie}} unverändert.',
  'yard-note.readings-damaged.no-backup':
    'Keine Sicherung hat {readings, plural, one {ihn} other {sie alle}} unverändert.',

  'yard-note.rescued':
    'Das ist die gerettete Kopie, jetzt Ihr Holzplatz. Sie hat alles, was gespeichert war, bevor die Datei verloren ging.',
  'yard-note.started-new':
    'Sie haben einen neuen Holzplatz begonnen. Die frühere Datei liegt unter anderem Namen im selben Ordner: {file}.',

  'damaged.recover-title': 'Aus der beschädigten Datei',
  'damaged.recover-newer': 'Empfohlen: Darin können Messwerte sein, die keine Sicherung hat.',
  'damaged.recover-older': 'Beschädigte Messwerte werden fehlen.',
  'damaged.backup-title': 'Neueste Sicherung',
  'damaged.backup-of':
    '{backedUpText}: {boards, plural, one {# Brett} other {# Bretter}}, {readings, plural, one {# Messwert} other {# Messwerte}}.',
  'damaged.backup-last-round': 'Letzte Messrunde: {lastRoundAt}.',
  'damaged.backup-has-all': 'Empfohlen: Danach wurde nichts mehr gespeichert.',
  'damaged.restore': 'Wiederherstellen …',
  'damaged.stays':
    'Beides lässt die beschädigte Datei bestehen. Nach dem Retten können Sie immer noch eine Sicherung wiederherstellen.',
  'damaged.stays-alone': 'Die beschädigte Datei wird nicht gelöscht.',
  'damaged.no-backup': 'Es gibt keine Sicherung.',
  'damaged.other-backups': 'Andere Sicherungen',
  'damaged.no-other-backup': 'Eine andere Sicherung gibt es nicht.',

  'salvage.do': 'Retten, was lesbar ist',
  'salvage.busy': 'Was lesbar ist, wird gerettet. Ein großer Holzplatz dauert eine Minute.',
  'salvage.show-report': 'Zeigen, was gerettet wurde',
  'salvage.save-report': 'Als Text speichern',
  'salvage.title': 'Aus der beschädigten Datei gerettet',
  'salvage.places':
    '{lost, plural, =0 {Orte: {saved} gerettet.} other {Orte: {saved} gerettet, {lost} verloren oder beschädigt.}}',
  'salvage.stacks':
    '{lost, plural, =0 {Stapel: {saved} gerettet.} other {Stapel: {saved} gerettet, {lost} verloren oder beschädigt.}}',
  'salvage.boards':
    '{lost, plural, =0 {Bretter: {saved} gerettet.} other {Bretter: {saved} gerettet, {lost} verloren oder beschädigt.}}',
  'salvage.rounds':
    '{lost, plural, =0 {Messrunden: {saved} gerettet.} other {Messrunden: {saved} gerettet, {lost} verloren oder beschädigt.}}',
  'salvage.readings':
    '{lost, plural, =0 {Messwerte: {saved} gerettet.} other {Messwerte: {saved} gerettet, {lost} verloren oder beschädigt.}}',
  'salvage.other':
    '{lost, plural, =0 {Andere Einträge: {saved} gerettet.} other {Andere Einträge: {saved} gerettet, {lost} verloren oder beschädigt.}}',
  'salvage.not-counted': 'Es kann mehr verloren sein. Manche verlorenen Einträge lassen sich nicht zählen.',
  'salvage.recovered':
    'Prüfen Sie Name, Holzart und Dicke von: {names}. Ihre eigenen Einträge gingen verloren.',
  'salvage.rounds-made-again':
    '{rounds, plural, one {# verlorene Messrunde wurde aus ihren Messwerten wiederhergestellt} other {# verlorene Messrunden wurden aus ihren Messwerten wiederhergestellt}}: {startedAt}. Prüfen Sie {rounds, plural, one {ihr Datum} other {ihre Daten}}.',
  'salvage.what-to-do': 'Messen Sie nach, wo Messwerte fehlen.',

  'recovered.species': 'Gerettete Holzart',
  'recovered.end-use': 'Gerettete Verwendung',
  'recovered.place': 'Geretteter Ort',
  'recovered.stack': 'Geretteter Stapel',
  'recovered.meter': 'Gerettetes Messgerät',
} satisfies Record<keyof typeof english, string>;
