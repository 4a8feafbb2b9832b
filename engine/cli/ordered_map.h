#pragma once
// Work on a stream by several threads, its results in the order of the stream, with a bound on what is under way.

#include <algorithm>
#include <condition_variable>
#include <deque>
#include <memory>
#include <mutex>
#include <string>
#include <thread>
#include <vector>

namespace wearline::cli {

/// Reads with `next` (false at the end), answers with `work` on `threads` threads (0: one a core), hands each answer to
/// `take` in the order read; `take` may end it all by returning false. `next` and `take` run on the calling thread
/// alone; `work` must be safe to run many times at once. At most 64 texts a thread are held at a time.
template <class Next, class Work, class Take> void ordered_map(Next next, Work work, Take take, unsigned threads) {
  struct Item {
    std::string text, answer;
    bool done = false;
  };
  if (threads == 0) threads = std::max(1U, std::thread::hardware_concurrency());
  std::mutex guard;
  std::condition_variable to_do, done;
  std::deque<std::shared_ptr<Item>> under_way, waiting;
  bool over = false;

  const auto worker = [&] {
    for (;;) {
      std::shared_ptr<Item> item;
      {
        std::unique_lock lock(guard);
        to_do.wait(lock, [&] { return over || !waiting.empty(); });
        if (waiting.empty()) return;
        item = waiting.front();
        waiting.pop_front();
      }
      item->answer = work(item->text);
      const std::lock_guard lock(guard);
      item->done = true;
      done.notify_one();
    }
  };
  std::vector<std::thread> crew;
  for (unsigned i = 0; i < threads; ++i) crew.emplace_back(worker);

  const std::size_t most = std::size_t{64} * threads;
  bool more = true, wanted = true;
  std::string text;
  const auto front_is_done = [&] {
    const std::lock_guard lock(guard);
    return !under_way.empty() && under_way.front()->done;
  };
  while (wanted && (more || !under_way.empty())) {
    // What is ready goes out before more is asked for: a slow stream is answered case by case.
    if (more && under_way.size() < most && !front_is_done()) {
      more = next(text);
      if (!more) continue;
      auto item = std::make_shared<Item>();
      item->text = std::move(text);
      text.clear();
      under_way.push_back(item);
      const std::lock_guard lock(guard);
      waiting.push_back(std::move(item));
      to_do.notify_one();
      continue;
    }
    {
      std::unique_lock lock(guard);
      done.wait(lock, [&] { return under_way.front()->done; });
    }
    wanted = take(under_way.front()->answer);
    under_way.pop_front();
  }
  {
    const std::lock_guard lock(guard);
    over = true;
    waiting.clear();
  }
  to_do.notify_all();
  for (std::thread& each : crew) each.join();
}

} // namespace wearline::cli
