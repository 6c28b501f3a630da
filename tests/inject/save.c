/* One edit as the editor saves it: a recovery copy first, then the file. Status 0: saved; 3: told that it was not. */
#include "store/session.h"

#include "wall/document.h"
#include "wall/edit.h"

int main(int count, char **words)
{
    Arena *arena = arena_new();
    Err err = {0};
    Errs errs = {0};
    Source source;
    Session *session = count == 2 ? session_open(words[1], &err) : NULL;
    if (session == NULL || !session_read(session, arena, &source, &errs))
        return 3;
    Document *document = document_new(source.wall);
    if (!edit_nudge_start(document, LENGTH_INCH, &err))
        return 4;
    session_keep(session, document_wall(document), &source, &err);
    bool saved = session_save(session, arena, document_wall(document), &source, false, &err);
    session_close(session);
    document_free(document);
    arena_free(arena);
    return saved ? 0 : 3;
}
