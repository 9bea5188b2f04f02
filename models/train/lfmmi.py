"""Lattice-free maximum mutual information without an alignment: all pronunciations of the words against a phone bigram.

A phone takes one frame of its first output and then any number of frames of its second one.
"""
import numpy as np
import torch

from lexicon import PHONE_COUNT, SILENCE, UNKNOWN_WORD

NEVER = -1e9


class SentenceGraph:
    """Phone states of one sentence with optional silence around words and every pronunciation in parallel. Immutable."""

    def __init__(self, words, pronunciations, r, known, unknown_share=0.5):
        self.phones, self.before = [], []
        ends = [-1]
        ends = self._silence(ends)
        for word in words:
            options = pronunciations[word]
            if word not in known and r.random() < unknown_share:
                options = [[UNKNOWN_WORD]]
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


def sentence_score(scores, frames, graph):
    """ln of the summed weight of all paths of each sentence (batch)."""
    batch, count, _ = scores.shape
    states, width = graph.phones.shape[1], graph.before.shape[2]
    scores = scores.clamp(-30, 30)
    index = (2 * graph.phones).unsqueeze(1).expand(batch, count, states)
    enter, stay = scores.gather(2, index).unbind(1), scores.gather(2, index + 1).unbind(1)
    before = graph.before.reshape(batch, states * width)
    never = torch.full((batch, 1), NEVER, device=scores.device)
    paths = graph.first + enter[0]
    for t in range(1, count):
        sources = torch.cat([paths, never], 1).gather(1, before).view(batch, states, width)
        following = torch.logaddexp(paths + stay[t], sources.logsumexp(-1) + enter[t])
        paths = torch.where((t < frames).unsqueeze(1), following, paths)
    return (paths + graph.last).logsumexp(1)


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
        count = scores.shape[1]
        scores = scores.clamp(-30, 30)
        top = scores.max(-1, keepdim=True)[0]
        weights = torch.exp(scores - top)
        enter, stay, top = weights[..., 0::2].unbind(1), weights[..., 1::2].unbind(1), top[..., 0].unbind(1)
        paths = self.start * enter[0]
        total = paths.sum(1, keepdim=True)
        result, paths = top[0] + total.log().squeeze(1), paths / total
        for t in range(1, count):
            following = paths * stay[t] + (paths @ self.step + 1e-5) * enter[t]
            total = following.sum(1, keepdim=True)
            live = t < frames
            paths = torch.where(live.unsqueeze(1), following / total, paths)
            result = result + torch.where(live, total.log().squeeze(1) + top[t], torch.zeros_like(result))
        return result + (paths @ self.end + 1e-6).log()
