#include "screen/app/layers.h"

#include "base/panic.h"

#include <string.h>

static void finish(Layer layer)
{
    if (layer.view->finish != NULL)
        layer.view->finish(layer.state);
}

void layers_push(Layers *layers, const View *view, void *state)
{
    BUG_UNLESS(layers->depth < LAYERS_MOST);
    layers->at[layers->depth++] = (Layer){view, state};
}

void layers_pop(Layers *layers)
{
    BUG_UNLESS(layers->depth > 0);
    finish(layers->at[--layers->depth]);
}

void layers_remove(Layers *layers, const void *state)
{
    int index = 0;
    while (index < layers->depth && layers->at[index].state != state)
        index++;
    if (index == layers->depth)
        return;
    Layer layer = layers->at[index];
    memmove(&layers->at[index], &layers->at[index + 1], (size_t)(layers->depth - index - 1) * sizeof layer);
    layers->depth--;
    finish(layer);
}

void layers_ground(Layers *layers, const View *view, void *state)
{
    if (layers->depth > 0)
        finish(layers->at[0]);
    else
        layers->depth = 1;
    layers->at[0] = (Layer){view, state};
}

Layer *layers_top(Layers *layers)
{
    BUG_UNLESS(layers->depth > 0);
    return &layers->at[layers->depth - 1];
}

void *layers_state(Layers *layers, const View *view)
{
    BUG_UNLESS(layers_top(layers)->view == view);
    return layers_top(layers)->state;
}

unsigned layers_places(const Layers *layers, const App *app)
{
    BUG_UNLESS(layers->depth > 0);
    const Layer *layer = &layers->at[layers->depth - 1];
    return layer->view->place != NULL ? layer->view->place(app, layer->state) : layer->view->places;
}
