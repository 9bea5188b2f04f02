"""Lattice-free maximum mutual information without an alignment: all pronunciations of the words against a phone bigram.

A phone takes one frame of its first output and then any number of frames of its second one.
"""
import numpy as np
import torch

from lexicon import PHONE_COUNT, SILENCE, UNKNOWN_WORD

NEVER = -1e9
LARGEST = 30


class SentenceGraph:
    """Phone states of one sentence with optional silence around words and every pronunciation in parallel. Immutable.

    ``heard``: whether the decoder has these words, those that it does not know being unknown ones.
    """

    def __init__(self, words, pronunciations, r, known, unknown_share=0.5):
        self.phones, self.before, self.heard = [], [], True
        ends = [-1]
        ends = self._silence(ends)
        for word in words:
            options = pronunciations[word]
            if word not in known:
                if r.random() < unknown_share:
                    options = [[UNKNOWN_WORD]]
                else:
                    self.heard = False
            ends = [self._pronounce(ends, option) for option in options]
            ends = self._silence(ends)
        if not words:
            ends = [0]
        self.ends = ends
        self.sources = np.full((len(self.phones), max(map(len, self.before))), -1, "i8")
        for state, sources in enumerate(self.before):
            self.sources[state, : len(sources)] = sources
        self.first = np.array([0.0 if -1 in sources else NEVER for sources in self.before], "f4")

    def _state(self, phone, before):
        self.phones.append(phone)
        self.before.append(before)
        return len(self.phones) - 1

    def _silence(self, ends):
        return [*ends, self._state(SILENCE, list(ends))]

    def _pronounce(self, ends, phones):
        before = list(ends)
        for phone in phones:
            before = [self._state(phone, before)]
        return before[0]


class GraphBatch:
    """Several sentence graphs as padded tensors. Immutable."""

    def __init__(self, graphs, device):
        states = max(len(g.phones) for g in graphs)
        width = max(g.sources.shape[1] for g in graphs)
        phones = np.zeros((len(graphs), states), "i8")
        before = np.full((len(graphs), states, width), states, "i8")
        first = np.full((len(graphs), states), NEVER, "f4")
        last = np.full((len(graphs), states), NEVER, "f4")
        for row, graph in enumerate(graphs):
            count, inner = graph.sources.shape
            phones[row, :count] = graph.phones
            before[row, :count, :inner] = np.where(graph.sources < 0, states, graph.sources)
            first[row, :count] = graph.first
            last[row, [e for e in graph.ends if e >= 0]] = 0
        as_tensor = lambda a: torch.from_numpy(a).to(device, non_blocking=True)
        self.phones, self.before, self.first, self.last = map(as_tensor, (phones, before, first, last))
        self.heard = as_tensor(np.array([g.heard for g in graphs]))


def emissions(scores):
    """Scores (batch, frames, 2 * phones) as those of entering and of staying in each phone, and where they follow the network."""
    return scores.clamp(-LARGEST, LARGEST), scores.abs() < LARGEST


def alive(frames, count):
    """(count, batch, 1): whether a frame belongs to its sentence."""
    return (torch.arange(count, device=frames.device)[:, None] < frames)[..., None]


class SentenceScore(torch.autograd.Function):
    """ln of the summed weight of all paths of each sentence. The gradient is the share of the paths that use an output in a frame: a
    backward pass by hand, since one operation a frame is what costs time here."""

    @staticmethod
    def forward(ctx, scores, frames, graph):
        batch, count, _ = scores.shape
        states, width = graph.phones.shape[1], graph.before.shape[2]
        bounded, inside = emissions(scores)
        index = (2 * graph.phones).unsqueeze(1).expand(batch, count, states)
        enter, stay = (bounded.gather(2, i).transpose(0, 1) for i in (index, index + 1))
        before, live = graph.before.reshape(batch, states * width), alive(frames, count)
        paths = torch.full((count, batch, states + 1), NEVER, device=scores.device, dtype=scores.dtype)
        paths[0, :, :states] = graph.first + enter[0]
        moves = torch.cat([stay.unsqueeze(-1), enter.unsqueeze(-1).expand(-1, -1, -1, width)], -1)
        own = torch.arange(states, device=scores.device).expand(batch, states).unsqueeze(-1)
        sources = torch.cat([own, graph.before], -1).reshape(batch, -1)
        for t in range(1, count):
            following = (paths[t - 1].gather(1, sources).view(batch, states, width + 1) + moves[t]).logsumexp(-1)
            paths[t, :, :states] = torch.where(live[t], following, paths[t - 1, :, :states])
        ends = paths[-1, :, :states] + graph.last
        ctx.save_for_backward(paths, enter, stay, before, index, inside, live, ends)
        return ends.logsumexp(1)

    @staticmethod
    def backward(ctx, weight):
        paths, enter, stay, before, index, inside, live, ends = ctx.saved_tensors
        count, batch, states = enter.shape
        come, here = paths[:-1], paths[1:, :, :states]
        stayed = (come[..., :states] + stay[1:] - here).clamp(max=0).exp()
        came = come.gather(2, before.expand(count - 1, -1, -1)).view(count - 1, batch, states, -1)
        came = (came + (enter[1:] - here).unsqueeze(-1)).clamp(max=0).exp() * live[1:, ..., None]
        kept = torch.where(live[1:], stayed, 1.0)
        share = torch.empty_like(enter)
        share[-1] = ends.softmax(1) * weight[:, None]
        for t in range(count - 2, -1, -1):
            sent = torch.zeros_like(paths[0]).scatter_add_(1, before, (share[t + 1].unsqueeze(-1) * came[t]).reshape(batch, -1))
            torch.addcmul(sent[:, :states], share[t + 1], kept[t], out=share[t])
        entered = torch.cat([share[:1], share[1:] * came.sum(-1)])
        remained = torch.cat([torch.zeros_like(share[:1]), share[1:] * stayed * live[1:]])
        gradient = torch.zeros(inside.shape, device=share.device, dtype=share.dtype)
        gradient.scatter_add_(2, index, entered.transpose(0, 1))
        gradient.scatter_add_(2, index + 1, remained.transpose(0, 1))
        return gradient * inside, None, None


def sentence_score(scores, frames, graph):
    """ln of the summed weight of all paths of each sentence (batch)."""
    return SentenceScore.apply(scores, frames, graph)


class PhoneBigram:
    """The competing sentences: a phone bigram counted from the training texts. Immutable."""

    def __init__(self, graphs, r, device):
        counts = np.full((PHONE_COUNT + 1, PHONE_COUNT + 1), 0.3)
        end = PHONE_COUNT
        for graph in graphs:
            for _ in range(2):
                self._count(graph, counts, end, r)
        counts[end, end] = 0
        shares = torch.tensor(counts / counts.sum(1, keepdims=True), dtype=torch.float32, device=device)
        self.start, self.step, self.end = shares[end, :end], shares[:end, :end], shares[:end, end]

    @staticmethod
    def _count(graph, counts, end, r):
        """Walk one random path backwards."""
        state, following = r.choice([e for e in graph.ends if e >= 0]), end
        while state >= 0:
            counts[graph.phones[state], following] += 1
            following = graph.phones[state]
            state = r.choice(graph.before[state])
        counts[end, following] += 1

    def score(self, scores, frames):
        """ln of the summed weight of all phone strings (batch)."""
        return BigramScore.apply(scores, frames, self.start, self.step + 1e-5, self.end + 1e-6)


class BigramScore(torch.autograd.Function):
    """ln of the summed weight of all phone strings; weights are scaled to a sum of one in each frame. The gradient as in SentenceScore."""

    @staticmethod
    def forward(ctx, scores, frames, start, step, end):
        count = scores.shape[1]
        bounded, inside = emissions(scores)
        top = bounded.amax(-1, keepdim=True)
        weights = (bounded - top).exp().transpose(0, 1)
        enter, stay, live = weights[..., 0::2], weights[..., 1::2], alive(frames, count)
        paths = torch.empty_like(enter)
        totals = torch.ones_like(top.transpose(0, 1))
        first = start * enter[0]
        totals[0] = first.sum(1, keepdim=True)
        paths[0] = first / totals[0]
        for t in range(1, count):
            following = torch.addcmul(paths[t - 1] * stay[t], paths[t - 1] @ step, enter[t])
            totals[t] = following.sum(1, keepdim=True)
            paths[t] = torch.where(live[t], following / totals[t], paths[t - 1])
        final = paths[-1] @ end
        ctx.save_for_backward(paths, enter, stay, totals, live, final, step, end, inside)
        return ((totals.log() + top.transpose(0, 1)) * live).sum((0, 2)) + final.log()

    @staticmethod
    def backward(ctx, weight):
        paths, enter, stay, totals, live, final, step, end, inside = ctx.saved_tensors
        enter, stay = torch.where(live, enter / totals, 0.0), torch.where(live, stay / totals, 1.0)
        ahead = torch.empty_like(paths)
        ahead[-1] = end / final[:, None]
        for t in range(len(paths) - 2, -1, -1):
            after = ahead[t + 1]
            torch.addcmul((after * enter[t + 1]) @ step.T, after, stay[t + 1], out=ahead[t])
        entered = torch.cat([(paths[0] * ahead[0])[None], (paths[:-1] @ step) * enter[1:] * ahead[1:]])
        remained = torch.cat([torch.zeros_like(paths[:1]), paths[:-1] * stay[1:] * ahead[1:] * live[1:]])
        gradient = torch.stack([entered, remained], -1).flatten(2).transpose(0, 1) * weight[:, None, None]
        return gradient * inside, None, None, None, None
