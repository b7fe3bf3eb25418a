#include "forecourse/server/http/loopback/local_server.h"

#include <netinet/in.h>
#include <sys/socket.h>
#include <unistd.h>

#include <atomic>
#include <chrono>
#include <exception>
#include <thread>
#include <utility>

#include "forecourse/server/http/body.h"
#include "forecourse/server/http/loopback/connection.h"
#include "forecourse/server/http/loopback/workers.h"

namespace forecourse::server {
namespace {

using namespace std::chrono_literals;
using std::chrono::milliseconds;

constexpr int most_waiting = 512;                     // connections, to be taken
constexpr std::size_t most_requests = 10000;          // of one connection, as it is told them
constexpr milliseconds longest_start = 5s;            // of a thread
constexpr milliseconds event_comment = 10s;           // between two signs of life to a page that listens
constexpr milliseconds event_wait = 500ms;            // before it is looked whether the page is still there
constexpr const char* accepts_gzip = "Accepts-Gzip";  // set by us in place of Accept-Encoding

const httplib::Headers headers_of_all{
    {"Content-Security-Policy",
     "default-src 'self'; style-src 'self' 'unsafe-inline'; img-src 'self' data: blob:; frame-src 'self' blob:; "
     "object-src 'none'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'"},
    {"X-Content-Type-Options", "nosniff"},
    {"Referrer-Policy", "no-referrer"},
    {"Cross-Origin-Resource-Policy", "same-origin"}};

thread_local const Connection* connection_here = nullptr;  // the one whose request this thread answers

/// Set with a length of its own: the library would else compress each answer, in more time than that saves on the way
/// within one machine.
void set_body(httplib::Response& response, std::string body, const std::string& type) {
  if (body.empty()) return;
  const std::size_t size = body.size();
  response.set_content_provider(
      size, type, [body = std::move(body)](std::size_t from, std::size_t length, httplib::DataSink& sink) {
        return sink.write(body.data() + from, length);
      });
}

void send(httplib::Response& response, Reply reply) {
  response.status = reply.status;
  response.set_header("Cache-Control", "no-store");
  if (!reply.saved_as.empty()) {
    response.set_header("Content-Disposition", "attachment; filename=\"" + reply.saved_as + "\"");
  }
  set_body(response, std::move(reply.body), reply.type);
}

void send(httplib::Response& response, const Asset& asset, const httplib::Request& request) {
  response.set_header("ETag", asset.tag);
  response.set_header("Vary", "Accept-Encoding");
  response.set_header("Cache-Control", asset.lasting ? "public, max-age=31536000, immutable" : "no-cache");
  response.status = 200;
  if (request.get_header_value("If-None-Match").find(asset.tag) != std::string::npos) {
    response.status = 304;
    return;
  }
  const bool gzip = !asset.gzip.empty() && request.has_header(accepts_gzip);
  if (gzip) response.set_header("Content-Encoding", "gzip");
  set_body(response, gzip ? asset.gzip : asset.bytes, asset.type);
}

Visitor visitor_of(const httplib::Request& request) {
  return {request.get_header_value_count("Host") == 1 ? request.get_header_value("Host") : std::string(),
          request.get_header_value("Origin"),
          request.has_header("Origin"),
          request.get_header_value("X-Forecourse-Key"),
          request.get_header_value("Content-Type"),
          request.get_header_value_count("Content-Length") == 1 ? request.get_header_value("Content-Length")
                                                                : std::string(),
          request.has_header("Transfer-Encoding")};
}

/// What the library may see of a request: it neither compresses nor cuts out pieces.
void simplify(httplib::Request& request) {
  const bool gzip = request.get_header_value("Accept-Encoding").find("gzip") != std::string::npos;
  for (const char* name : {"Accept-Encoding", "Range", accepts_gzip}) request.headers.erase(name);
  request.ranges.clear();
  if (gzip) request.headers.emplace(accepts_gzip, "yes");
}

}  // namespace

/// The library's server with our connections and our threads.
class LocalServer::Http final : public httplib::Server {
 public:
  explicit Http(LocalServer& owner) : owner_(owner) {
    new_task_queue = [this] { return new Workers(waiting_); };  // NOLINT: the library deletes it
    set_tcp_nodelay(true);
    set_socket_options([](int socket) {  // not the library's: with its own, two servers may share one port
      const int yes = 1;
      setsockopt(socket, SOL_SOCKET, SO_REUSEADDR, &yes, sizeof yes);
    });
    set_keep_alive_max_count(most_requests);
    set_payload_max_length(largest_body);
    set_default_headers(headers_of_all);
    set_pre_routing_handler([this](const httplib::Request& request, httplib::Response& response) {
      return before_body(request, response) ? HandlerResponse::Handled : HandlerResponse::Unhandled;
    });
    Post(".*", [this](const httplib::Request& request, httplib::Response& response,
                      const httplib::ContentReader& reader) { with_body(request, response, reader); });
    set_error_handler([](const httplib::Request&, httplib::Response& response) {
      if (response.content_length_ == 0) send(response, refusal(response.status, "the request was not understood"));
    });
    set_exception_handler([](const httplib::Request&, httplib::Response& response, const std::exception_ptr&) {
      send(response, refusal(500, "the answer broke off by a fault of the program", "report it with the site file"));
    });
  }

  /// The library lets no more than five connections wait to be taken; the sixth would be late by a second.
  void let_more_wait() { ::listen(svr_sock_, most_waiting); }

  void end() {
    stopping_ = true;
    stop();
  }

 private:
  bool process_and_close_socket(socket_t socket) override;
  /// \return false: there may be more to come that is not read
  [[nodiscard]] bool answer_requests(Connection& connection);
  [[nodiscard]] bool before_body(const httplib::Request& request, httplib::Response& response);
  void with_body(const httplib::Request& request, httplib::Response& response, const httplib::ContentReader& reader);
  void answer(const RouteFound& found, report::Json body, httplib::Response& response);
  void send_asset(const httplib::Request& request, httplib::Response& response);
  void send_events(httplib::Response& response);

  LocalServer& owner_;
  std::atomic<std::size_t> waiting_ = 0;
  std::atomic<bool> stopping_ = false;
};

bool LocalServer::Http::process_and_close_socket(socket_t socket) {
  Connection connection(socket, [this] { return stopping_ || waiting_ > 0; });
  connection_here = &connection;
  if (!answer_requests(connection)) connection.linger();
  connection_here = nullptr;
  close(socket);
  return true;
}

bool LocalServer::Http::answer_requests(Connection& connection) {
  while (!stopping_ && connection.wait()) {
    connection.begin();
    std::size_t head = 0;
    std::string length;
    const auto note = [&](httplib::Request& request) {
      head = connection.taken();
      length = request.get_header_value("Content-Length");
      if (request.has_header("Transfer-Encoding")) length = "not told";
      simplify(request);
    };
    bool closed = false;
    const bool good = process_request(connection, false, closed, note);
    const std::size_t body = connection.taken() - head;
    if (std::to_string(body) != (length.empty() ? "0" : length)) return false;  // what is left is no request
    if (!good || closed) return true;
  }
  return true;
}

bool LocalServer::Http::before_body(const httplib::Request& request, httplib::Response& response) {
  const Visitor visitor = visitor_of(request);
  if (std::optional<Reply> no = refuse_visitor(visitor, owner_.doorway_)) return send(response, *no), true;
  const bool get = request.method == "GET" || request.method == "HEAD";
  if (get && request.path == "/api/events") return send_events(response), true;
  if (get && !request.path.starts_with("/api/")) return send_asset(request, response), true;
  const RouteFound found = find_route(owner_.routes_, get ? "GET" : request.method, request.path);
  if (found.route == nullptr && !found.other_methods.empty()) {
    response.set_header("Allow", found.other_methods);
    return send(response, refusal(405, "this is not asked for in that way", "use " + found.other_methods)), true;
  }
  if (found.route == nullptr) return send(response, refusal(404, "there is nothing of that name")), true;
  if (found.route->access == Route::Access::keyed) {
    if (std::optional<Reply> no = refuse_key(visitor, owner_.doorway_)) return send(response, *no), true;
  }
  if (request.method != "POST") return answer(found, nullptr, response), true;
  std::optional<Reply> no = refuse_body(visitor);
  if (no) send(response, *no);
  return no.has_value();
}

void LocalServer::Http::with_body(const httplib::Request& request, httplib::Response& response,
                                  const httplib::ContentReader& reader) {
  std::string text;
  const bool whole = reader([&](const char* bytes, std::size_t size) {
    text.append(bytes, size);
    return text.size() <= largest_body;
  });
  if (!whole) return send(response, refusal(408, "the body did not come in time", "send it again"));
  std::optional<report::Json> body = read_body(text);
  if (!body) return send(response, refusal(400, "the body is no JSON", "or brackets stand too deep in brackets"));
  answer(find_route(owner_.routes_, request.method, request.path), std::move(*body), response);
}

void LocalServer::Http::answer(const RouteFound& found, report::Json body, httplib::Response& response) {
  const Connection* connection = connection_here;
  const auto given_up = [this, connection] { return stopping_ || connection->gone(); };
  send(response, found.route->handler({found.tail, std::move(body), given_up}));
}

void LocalServer::Http::send_asset(const httplib::Request& request, httplib::Response& response) {
  const auto asset = owner_.assets_.find(request.path);
  if (asset == owner_.assets_.end()) return send(response, refusal(404, "there is nothing of that name"));
  send(response, asset->second, request);
}

void LocalServer::Http::send_events(httplib::Response& response) {
  std::shared_ptr<Events::Listener> listener = owner_.events_.join();
  if (!listener) return send(response, refusal(503, "too many pages listen", "close some of them"));
  response.status = 200;
  response.set_header("Cache-Control", "no-store");
  response.set_chunked_content_provider(
      "text/event-stream", [listener, quiet = event_comment](std::size_t, httplib::DataSink& sink) mutable {
        const std::optional<std::string> news = listener->next(quiet < event_comment ? event_wait : 0ms);
        if (listener->closed()) return sink.done(), true;
        quiet += event_wait;
        if (!news && quiet < event_comment) return sink.is_writable();
        quiet = 0ms;
        const std::string text = news.value_or(": here\n\n");
        return sink.write(text.data(), text.size());
      });
}

LocalServer::LocalServer(std::vector<Route> routes, Assets assets, Events& events)
    : routes_(std::move(routes)),
      assets_(std::move(assets)),
      events_(events),
      doorway_{0, new_key()},
      http_(std::make_unique<Http>(*this)) {}

LocalServer::~LocalServer() = default;

bool LocalServer::bind(int port) {
  constexpr const char* here = "127.0.0.1";
  doorway_.port = port == 0 ? http_->bind_to_any_port(here) : (http_->bind_to_port(here, port) ? port : 0);
  if (doorway_.port > 0) http_->let_more_wait();
  return doorway_.port > 0;
}

void LocalServer::serve() { http_->listen_after_bind(); }

void LocalServer::wait_until_serving() const {
  for (milliseconds waited = 0ms; !http_->is_running() && waited < longest_start; waited += 1ms) {
    std::this_thread::sleep_for(1ms);
  }
}

void LocalServer::stop() {
  events_.close();
  http_->end();
}

}  // namespace forecourse::server
